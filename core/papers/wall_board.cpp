#include "core/papers/wall_board.h"

#include <algorithm>
#include <cmath>
#include <functional>

#include "core/base/format.h"
#include "core/papers/detail/time_axis.h"
#include "core/papers/figures.h"
#include "core/papers/pen.h"

namespace dampward::papers {
namespace {

constexpr double axis_left = 68, next_width = 44, row_height = 15.2, bar_height = 5.6, legend_height = 6;
// More days side by side are too narrow to read, more moments in a line too.
constexpr std::size_t days_a_page = 6, moments_a_line = 8;
constexpr Type small{tiny, 500}, small_name{tiny, 600}, read_name{reading, 600}, read_bold{reading, 700};

struct BoardRow {
  double height = 0;
  std::function<void(Pen&, double)> draw;
};

// One stretch of days, over as many pages as its units take.
class Stretch {
 public:
  Stretch(const WallBoard& board, std::vector<TimeAxis::Day> days, bool first, const Paper& paper,
          const Words& words, const Measure& measure)
      : board_(board),
        first_(first),
        paper_(landscape(paper)),
        words_(words),
        measure_(measure),
        right_(paper_.width - 12),
        axis_(std::move(days), axis_left, right_ - next_width) {}

  void draw(Pages& pages) const {
    Page scratch{paper_, {}};
    Pen learning(scratch, measure_);
    const double top = head_(learning), room = learning.bottom() - legend_height - top;
    std::vector<BoardRow> rows;
    for (const WallBoard::Unit& unit : board_.units) {
      if (shown(unit)) rows.push_back(unit_row(learning, unit));
    }
    for (const WallBoard::Refused& refused : board_.refused) {
      if (first_) rows.push_back(refused_row(learning, refused));
    }
    for (std::size_t i = 0; i < rows.size();) {
      pages.push_back({paper_, {}});
      Pen pen(pages.back(), measure_);
      double y = head_(pen), taken = 0;
      const std::size_t begin = i;
      for (; i < rows.size() && (i == begin || taken + rows[i].height <= room); ++i) taken += rows[i].height;
      grid(pen, y, y + taken);
      for (std::size_t k = begin; k < i; ++k) {
        rows[k].draw(pen, y);
        y += rows[k].height;
      }
      pen.line(left_edge, y, right_, y);
      pen.text(left_edge, y + 4.8, words_("board_legend"), small_name);
    }
  }

 private:
  std::string clock(Instant time) const { return clock_of(time, board_.clock); }
  std::string day(Instant time) const { return weekday_name(words_, time, board_.clock); }
  Date date(Instant time) const {
    return Date(std::chrono::floor<std::chrono::days>(board_.clock.local(time)));
  }
  Instant begins() const { return axis_.days().front().from; }
  Instant ends() const { return axis_.days().back().to; }
  bool today(Instant time) const { return time >= begins() && time <= ends(); }
  bool shown(const WallBoard::Unit& unit) const {
    return std::any_of(unit.bars.begin(), unit.bars.end(),
                       [&](const WallBoard::Bar& bar) { return bar.from < ends() && bar.to > begins(); });
  }

  std::vector<Moment> moments() const {
    std::vector<std::pair<Instant, Moment>> timed;
    const auto add = [&](const char* word, const std::string& load, Instant time) {
      if (today(time)) timed.push_back({time, {day(time) + ", " + words_(word, {load}), clock(time)}});
    };
    for (const WallBoard::Load& load : board_.loads) {
      add("board_in", load.id, load.in);
      add("board_out", load.id, load.out);
    }
    std::stable_sort(timed.begin(), timed.end(),
                     [](const auto& a, const auto& b) { return a.first < b.first; });
    std::vector<Moment> all;
    for (auto& [time, moment] : timed) all.push_back(std::move(moment));
    if (all.empty()) {
      all.push_back({day(begins()) + ", " + words_("board_begins"), clock(begins())});
      all.push_back({day(ends()) + ", " + words_("board_ends"), clock(ends())});
    }
    return all;
  }

  // Gives where the first row begins.
  double head_(Pen& pen) const {
    std::string name = day(begins()) + " " + iso_text(date(begins()));
    if (date(ends()) != date(begins()))
      name = words_("board_days", {name, day(ends()) + " " + iso_text(date(ends()))});
    const std::string air = words_(
        "board_air", {degrees(board_.air.celsius()), fixed(board_.humidity.percent(), 0) + thin_space + "%",
                      degrees(up(board_.dew_point))});
    double y = head(pen, {words_("board"), board_.shop, name, "", air, "", "", "",
                          "DAMPWARD BOARD " + iso_text(date(begins()))}) -
               4;
    const std::vector<Moment> all = moments();
    for (std::size_t i = 0; i < all.size(); i += moments_a_line) {
      const std::size_t end = std::min(all.size(), i + moments_a_line);
      y += pen.moments(y, {all.begin() + static_cast<std::ptrdiff_t>(i),
                           all.begin() + static_cast<std::ptrdiff_t>(end)}) +
           1;
    }
    return axis(pen, y);
  }

  // Whole hours that stand far enough apart to be named.
  int hours_apart() const {
    for (const int hours : {1, 2, 3, 4, 6}) {
      if (hours * axis_.per_hour() >= 11) return hours;
    }
    return 24;
  }

  template <class Each>
  void for_each_hour(const Each& each) const {
    const int apart = hours_apart();
    for (const TimeAxis::Day& day : axis_.days()) {
      auto local = std::chrono::ceil<std::chrono::hours>(board_.clock.local(day.from));
      for (;; local += std::chrono::hours(1)) {
        const Instant time = board_.clock.instant(LocalTime(local));
        if (time > day.to) break;
        const auto of_day = local - std::chrono::floor<std::chrono::days>(local);
        if (of_day.count() % apart == 0) each(time);
      }
    }
  }

  double axis(Pen& pen, double y) const {
    for (const TimeAxis::Day& d : axis_.days())
      pen.text(axis_.at(d.from), y + 3, day(d.from) + " " + iso_text(date(d.from)).substr(5), small_name);
    double free_from = 0;
    for_each_hour([&](Instant time) {
      const double half = pen.width_of(clock(time), small) / 2, x = axis_.at(time);
      if (x - half < free_from || x + half > axis_.at(ends()) + 4) return;
      pen.text(x, y + 7.4, clock(time), small, Side::middle);
      free_from = x + half + 1;
    });
    pen.text(right_, y + 7.4, words_("board_next"), small_name, Side::right);
    return y + 9;
  }

  void grid(Pen& pen, double top, double bottom) const {
    for_each_hour([&](Instant time) { pen.line(axis_.at(time), top - 1, axis_.at(time), bottom); });
    const auto& days = axis_.days();
    for (std::size_t i = 0; i < days.size(); ++i) {
      const double from = axis_.at(days[i].from);
      if (i > 0) pen.hatch(from - TimeAxis::night, top, TimeAxis::night, bottom - top, 2.4);
      pen.line(from, top - 1, from, bottom, line_width);
    }
    pen.line(axis_.at(ends()), top - 1, axis_.at(ends()), bottom, line_width);
  }

  // Serial and kind; gives how high.
  double caption(Pen& pen, double y, const std::string& unit, const std::string& kind) const {
    const double room = axis_left - left_edge - 3;
    const bool fits = pen.width_of(unit, {value_size, 700}) <= room;
    const Type type = fits ? Type{value_size, 700} : read_bold;
    const double lines = pen.text(left_edge, y + 6.4, unit, type, Side::left, room);
    const double low = y + 6.4 + lines - lead(type.points) + 4.7;
    return low - y + pen.text(left_edge, low, kind, small, Side::left, room) - lead(tiny) + 3;
  }

  // What comes next and when, else when it is ready; due, and late in words.
  double next(Pen& pen, double y, const WallBoard::Unit& unit) const {
    const auto next = std::find_if(unit.steps.begin(), unit.steps.end(),
                                   [&](const WallBoard::Next& step) { return step.starts >= ends(); });
    const auto when = [&](Instant time) { return day(time) + " " + clock(time); };
    double low = y + 5.4;
    const double room = next_width - 3;
    if (next != unit.steps.end()) {
      pen.text(right_, low, when(next->starts), read_bold, Side::right);
      low += 4.6;
      low += pen.text(right_, low, step_name(words_, next->key), small, Side::right, room);
    } else {
      pen.text(right_, low, words_("board_ready", {when(unit.done)}), read_bold, Side::right);
      low += 4.8;
    }
    if (unit.due) {
      const auto noon =
          board_.clock.instant(LocalTime(std::chrono::local_days(*unit.due)) + std::chrono::hours(12));
      const std::string due =
          words_(unit.late ? "board_late" : "board_due", {day(noon) + " " + iso_text(*unit.due).substr(5)});
      low += pen.text(right_, low, due, unit.late ? read_bold : small, Side::right, room);
    }
    return low - y - 1.5;
  }

  void bar(Pen& pen, double y, const WallBoard::Bar& bar) const {
    if (!axis_.shows(bar.from, bar.to)) return;
    using Place = WallBoard::Place;
    const double from = axis_.at(bar.from), to = std::max(from + 0.6, axis_.at(bar.to)), top = y + 1.8,
                 foot = top + bar_height, base = top + 4.1;
    const auto name = [&](const std::string& words, const Type& type) {
      if (pen.width_of(words, type) < to - from - 2) pen.text(from + 1, base, words, type);
    };
    if (bar.place == Place::airing) {
      pen.stroke({{{from, (top + foot) / 2}, {to, (top + foot) / 2}}, 0.5, Ink::black, false, true, false});
      const std::string words = words_("board_airing");
      if (pen.width_of(words, small_name) < to - from - 8)
        pen.text((from + to) / 2, base, words, small_name, Side::middle, 0, 1.2);
      return;
    }
    if (bar.place == Place::lacquer) {
      pen.area(from, top, to - from, bar_height, Ink::petrol);
      return name(words_("board_lacquer"), {tiny, 600, Ink::white});
    }
    const bool bench = bar.place == Place::bench;
    pen.area(from, top, to - from, bar_height, bench ? Ink::white : Ink::tint);
    pen.box(from, top, to - from, bar_height, bench ? line_width : 0.4);
    // A thick foot tells heat from bench on a grey copy.
    if (bar.place == Place::oven) pen.line(from, foot, to, foot, wall_width);
    const std::string words = words_(bench                     ? "board_bench"
                                     : bar.place == Place::box ? "board_box"
                                                               : "board_oven");
    const std::string full = bar.load.empty() ? words : words + " " + bar.load;
    const bool fits = pen.width_of(full, small_name) < to - from - 2;
    name(fits || bar.load.empty() ? full : bar.load, small_name);
  }

  // The window's walls, and its clock times in words under the bars.
  void window(Pen& pen, double y, const WallBoard::Unit& unit) const {
    if (unit.opens && today(*unit.opens))
      pen.line(axis_.at(*unit.opens), y + 1, axis_.at(*unit.opens), y + 8.2, thick);
    if (unit.shuts && today(*unit.shuts)) pen.wall(axis_.at(*unit.shuts), y + 4.6, 7.2);
    if (unit.coats.empty()) return;
    const Instant first = unit.coats.front();
    if (!today(first) && !(unit.shuts && today(*unit.shuts))) return;
    std::string coats;
    for (const Instant coat : unit.coats) coats += (coats.empty() ? "" : "  ") + clock(coat);
    std::string told = words_("board_coats_alone", {coats});
    if (unit.shuts) {
      const std::string name = date(first) == date(*unit.shuts) ? "" : day(*unit.shuts) + thin_space;
      told = words_("board_coats", {coats, name + clock(*unit.shuts)});
    }
    const double width = pen.width_of(told, read_name);
    const double x =
        std::clamp(axis_.at(first), axis_left + 1, std::max(axis_left + 1, right_ - next_width - width - 1));
    pen.text(x, y + 11.9, told, read_name, Side::left, 0, 0.8);
  }

  BoardRow unit_row(Pen& learning, const WallBoard::Unit& unit) const {
    const double height =
        std::max({row_height, caption(learning, 0, unit.unit, unit.kind), next(learning, 0, unit)});
    return {height, [this, &unit, height](Pen& pen, double y) {
              pen.line(left_edge, y, right_, y);
              caption(pen, y, unit.unit, unit.kind);
              // The lane for the pencil.
              const double lane = y + height - 1.6;
              pen.stroke(
                  {{{axis_left, lane}, {right_ - next_width, lane}}, hair, Ink::black, false, true, false});
              for (const WallBoard::Bar& b : unit.bars) bar(pen, y, b);
              window(pen, y, unit);
              next(pen, y, unit);
            }};
  }

  double refusal(Pen& pen, double y, const WallBoard::Refused& refused) const {
    const double room = right_ - axis_left - 2;
    std::string told = words_("board_refused", {refused.reason});
    if (told.back() != '.') told += '.';
    if (!refused.opens_with.empty()) told += " " + words_("board_opens", {refused.opens_with});
    return 6 + pen.caution(axis_left + 2, y + 6, room, told) - lead(reading) + 4;
  }

  BoardRow refused_row(Pen& learning, const WallBoard::Refused& refused) const {
    const double height = std::max(
        {row_height - 3, caption(learning, 0, refused.unit, refused.kind), refusal(learning, 0, refused)});
    return {height, [this, &refused, height](Pen& pen, double y) {
              pen.area(axis_left - 1, y + 0.3, right_ - axis_left + 1, height - 0.6, Ink::white);
              pen.line(left_edge, y, right_, y);
              caption(pen, y, refused.unit, refused.kind);
              refusal(pen, y, refused);
            }};
  }

  const WallBoard& board_;
  bool first_;
  Paper paper_;
  const Words& words_;
  const Measure& measure_;
  double right_;
  TimeAxis axis_;
};

// The days in stretches of one length, none longer than a page can show.
std::vector<std::vector<TimeAxis::Day>> stretches(const WallBoard& board) {
  const std::size_t count = board.days.size(), pages = (count + days_a_page - 1) / days_a_page;
  std::vector<std::vector<TimeAxis::Day>> all(pages);
  for (std::size_t i = 0; i < count; ++i)
    all[i * pages / count].push_back({board.days[i].from, board.days[i].to});
  return all;
}

}  // namespace

Pages wall_board(const WallBoard& board, const Paper& paper, const Words& words, const Measure& measure) {
  Pages pages;
  bool first = true;
  for (std::vector<TimeAxis::Day>& days : stretches(board)) {
    Stretch(board, std::move(days), first, paper, words, measure).draw(pages);
    first = false;
  }
  for (std::size_t i = 0; i < pages.size(); ++i) {
    Pen pen(pages[i], measure);
    foot(pen, words, words("board"), board.plan, static_cast<int>(i) + 1, static_cast<int>(pages.size()));
  }
  return pages;
}

}  // namespace dampward::papers
