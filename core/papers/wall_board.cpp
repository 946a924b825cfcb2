#include "core/papers/wall_board.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "core/base/format.h"
#include "core/papers/detail/board_rows.h"
#include "core/papers/figures.h"
#include "core/papers/pen.h"

namespace dampward::papers {
namespace {

constexpr double axis_left = 68, close_axis_left = 78, legend_height = 6;
// More days side by side are too narrow for words, more moments in a line too.
constexpr std::size_t days_a_page = 6, moments_a_line = 8;
constexpr Type small{tiny, 500}, small_name{tiny, 600};

// One stretch of days: in full, or close enough for one page.
class Stretch {
 public:
  Stretch(const WallBoard& board, std::vector<TimeAxis::Day> days, bool first, bool close, const Paper& paper,
          const Words& words, const Measure& measure)
      : board_(board),
        first_(first),
        close_(close),
        paper_(landscape(paper)),
        words_(words),
        measure_(measure),
        right_(paper_.width - 12),
        axis_(std::move(days), close ? close_axis_left : axis_left, right_ - BoardRows::next_width(close)) {}

  // In full, over as many pages as that takes.
  void draw(Pages& pages) const {
    Page scratch{paper_, {}};
    Pen learning(scratch, measure_);
    const double room = learning.bottom() - legend_height - head_(learning);
    const BoardRows drawn(board_, words_, axis_, right_, BoardRows::tallest);
    const std::vector<BoardRow> rows = rows_of(drawn, learning);
    for (std::size_t i = 0; i < rows.size();) {
      const std::size_t begin = i;
      double taken = 0;
      for (; i < rows.size() && (i == begin || taken + rows[i].height <= room); ++i) taken += rows[i].height;
      pages.push_back(page(rows, begin, i));
    }
  }

  // Everything on one page, rows as high as that lets them be. None: it does not fit.
  std::optional<Page> one_page() const {
    Page scratch{paper_, {}};
    Pen learning(scratch, measure_);
    const double room = learning.bottom() - legend_height - head_(learning);
    for (double height = BoardRows::tallest - 0.2; height >= BoardRows::lowest; height -= 0.2) {
      const BoardRows drawn(board_, words_, axis_, right_, height);
      const std::vector<BoardRow> rows = rows_of(drawn, learning);
      double taken = 0;
      for (const BoardRow& row : rows) taken += row.height;
      if (taken <= room) return page(rows, 0, rows.size());
    }
    return std::nullopt;
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

  std::vector<BoardRow> rows_of(const BoardRows& drawn, Pen& learning) const {
    std::vector<BoardRow> rows;
    for (const WallBoard::Unit& unit : board_.units) {
      if (shown(unit)) rows.push_back(drawn.unit(learning, unit));
    }
    for (const WallBoard::Refused& refused : board_.refused) {
      if (first_) rows.push_back(drawn.refused(learning, refused));
    }
    return rows;
  }

  Page page(const std::vector<BoardRow>& rows, std::size_t from, std::size_t to) const {
    Page page{paper_, {}};
    Pen pen(page, measure_);
    double y = head_(pen), taken = 0;
    for (std::size_t i = from; i < to; ++i) taken += rows[i].height;
    grid(pen, y, y + taken);
    for (std::size_t i = from; i < to; ++i) {
      rows[i].draw(pen, y);
      y += rows[i].height;
    }
    pen.line(left_edge, y, right_, y);
    pen.text(left_edge, y + 4.8, words_("board_legend"), small_name);
    return page;
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
    if (close_)
      pen.text(right_ - BoardRows::next_alone - 2, y + 7.4, words_("board_shuts"), small_name, Side::right);
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

  const WallBoard& board_;
  bool first_, close_;
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
    Stretch(board, std::move(days), first, false, paper, words, measure).draw(pages);
    first = false;
  }
  if (pages.size() > 1) {
    std::vector<TimeAxis::Day> all;
    for (const WallBoard::Day& day : board.days) all.push_back({day.from, day.to});
    if (auto page = Stretch(board, std::move(all), true, true, paper, words, measure).one_page())
      pages = {std::move(*page)};
  }
  for (std::size_t i = 0; i < pages.size(); ++i) {
    Pen pen(pages[i], measure);
    foot(pen, words, words("board"), board.plan, static_cast<int>(i) + 1, static_cast<int>(pages.size()));
  }
  return pages;
}

}  // namespace dampward::papers
