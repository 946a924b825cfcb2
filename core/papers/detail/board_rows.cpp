#include "core/papers/detail/board_rows.h"

#include <algorithm>

namespace dampward::papers {
namespace {

constexpr Type small{tiny, 500}, small_name{tiny, 600}, read_name{reading, 600}, read_bold{reading, 700};

}  // namespace

Date BoardRows::date(Instant time) const {
  return Date(std::chrono::floor<std::chrono::days>(board_.clock.local(time)));
}

// Serial and kind; gives how high.
double BoardRows::caption(Pen& pen, double y, const std::string& unit, const std::string& kind) const {
  const double left = axis_.left();
  const double room = left - left_edge - 3;
  if (close()) {
    const double lines = pen.text(left_edge, y + 4.9, unit, read_bold, Side::left, room);
    const double beside = left_edge + pen.width_of(unit, read_bold) + 2.5;
    if (beside + pen.width_of(kind, small) <= left - 2) pen.text(beside, y + 4.9, kind, small);
    return lines + 1.6;
  }
  const bool fits = pen.width_of(unit, {value_size, 700}) <= room;
  const Type type = fits ? Type{value_size, 700} : read_bold;
  const double lines = pen.text(left_edge, y + 6.4, unit, type, Side::left, room);
  const double low = y + 6.4 + lines - lead(type.points) + 4.7;
  return low - y + pen.text(left_edge, low, kind, small, Side::left, room) - lead(tiny) + 3;
}

// What comes next and when, else when it is ready; due, and late in words.
double BoardRows::next(Pen& pen, double y, const WallBoard::Unit& unit) const {
  const auto next = std::find_if(unit.steps.begin(), unit.steps.end(),
                                 [&](const WallBoard::Next& step) { return step.starts >= ends(); });
  const auto when = [&](Instant time) { return day(time) + " " + clock(time); };
  const double room = (close() ? next_alone : next_width(false)) - 3;
  std::string due;
  if (unit.due) {
    const auto noon =
        board_.clock.instant(LocalTime(std::chrono::local_days(*unit.due)) + std::chrono::hours(12));
    due = words_(unit.late ? "board_late" : "board_due", {day(noon) + " " + iso_text(*unit.due).substr(5)});
  }
  const std::string first =
      next != unit.steps.end() ? when(next->starts) : words_("board_ready", {when(unit.done)});
  if (close()) {
    const std::string& told = unit.late ? due : first;
    return 1.6 + pen.text(right_, y + 4.9, told, unit.late ? Type{tiny, 700} : small_name, Side::right, room);
  }
  double low = y + 5.4;
  pen.text(right_, low, first, read_bold, Side::right);
  low += next != unit.steps.end() ? 4.6 : 4.8;
  if (next != unit.steps.end())
    low += pen.text(right_, low, step_name(words_, next->key), small, Side::right, room);
  if (unit.due) low += pen.text(right_, low, due, unit.late ? read_bold : small, Side::right, room);
  return low - y - 1.5;
}

// Whether nothing but airing is drawn between these places.
bool BoardRows::stands_free(const WallBoard::Unit& unit, double from, double to) const {
  return std::none_of(unit.bars.begin(), unit.bars.end(), [&](const WallBoard::Bar& bar) {
    return bar.place != WallBoard::Place::airing && axis_.shows(bar.from, bar.to) &&
           axis_.at(bar.from) < to && axis_.at(bar.to) + 0.6 > from;
  });
}

void BoardRows::bar(Pen& pen, double y, const WallBoard::Unit& unit, const WallBoard::Bar& bar) const {
  if (!axis_.shows(bar.from, bar.to)) return;
  using Place = WallBoard::Place;
  const double from = axis_.at(bar.from), to = std::max(from + 0.6, axis_.at(bar.to)), top = y + bar_top(),
               foot = top + bar_height(), base = top + 0.5 * bar_height() + 1.3;
  const auto name = [&](const std::string& words, const Type& type) {
    if (pen.width_of(words, type) < to - from - 2) pen.text(from + 1, base, words, type);
  };
  if (bar.place == Place::airing) {
    pen.stroke({{{from, (top + foot) / 2}, {to, (top + foot) / 2}}, 0.5, Ink::black, false, true, false});
    const std::string words = words_("board_airing");
    const double half = 0.5 * pen.width_of(words, small_name) + 1.5, middle = 0.5 * (from + to);
    if (2 * half < to - from - 5 && stands_free(unit, middle - half, middle + half))
      pen.text(middle, base, words, small_name, Side::middle, 0, 1.2);
    return;
  }
  if (bar.place == Place::lacquer) {
    pen.area(from, top, to - from, foot - top, Ink::petrol);
    return name(words_("board_lacquer"), {tiny, 600, Ink::white});
  }
  const bool bench = bar.place == Place::bench;
  pen.area(from, top, to - from, foot - top, bench ? Ink::white : Ink::tint);
  pen.box(from, top, to - from, foot - top, bench ? line_width : 0.4);
  // A thick foot tells heat from bench on a grey copy.
  if (bar.place == Place::oven) pen.line(from, foot, to, foot, wall_width);
  const std::string words = words_(bench                     ? "board_bench"
                                   : bar.place == Place::box ? "board_box"
                                                             : "board_oven");
  const std::string full = bar.load.empty() ? words : words + " " + bar.load;
  const bool fits = pen.width_of(full, small_name) < to - from - 2;
  name(fits || bar.load.empty() ? full : bar.load, small_name);
}

// The window's walls and, where there is room, its clock times in words under the bars.
void BoardRows::window(Pen& pen, double y, const WallBoard::Unit& unit) const {
  const double top = y + bar_top() - 0.8, foot = top + bar_height() + 1.6;
  if (unit.opens && today(*unit.opens))
    pen.line(axis_.at(*unit.opens), top, axis_.at(*unit.opens), foot, thick);
  if (unit.shuts && today(*unit.shuts)) pen.wall(axis_.at(*unit.shuts), 0.5 * (top + foot), foot - top);
  if (close() && unit.shuts)
    pen.text(right_ - next_alone - 2, y + 4.9, day(*unit.shuts) + " " + clock(*unit.shuts), small_name,
             Side::right);

  if (unit.coats.empty() || close()) return;
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
  const double x = std::clamp(axis_.at(first), axis_.left() + 1,
                              std::max(axis_.left() + 1, right_ - next_width(close()) - width - 1));
  pen.text(x, y + 11.9, told, read_name, Side::left, 0, 0.8);
}

BoardRow BoardRows::unit(Pen& learning, const WallBoard::Unit& unit) const {
  const double height =
      std::max({height_, caption(learning, 0, unit.unit, unit.kind), next(learning, 0, unit)});
  return {height, [this, &unit, height](Pen& pen, double y) {
            pen.line(left_edge, y, right_, y);
            caption(pen, y, unit.unit, unit.kind);
            // The lane for the pencil.
            const double lane = y + height - (close() ? 0.7 : 1.6);
            pen.stroke({{{axis_.left(), lane}, {right_ - next_width(close()), lane}},
                        hair,
                        Ink::black,
                        false,
                        true,
                        false});
            for (const WallBoard::Bar& b : unit.bars) bar(pen, y, unit, b);
            window(pen, y, unit);
            next(pen, y, unit);
          }};
}

double BoardRows::refusal(Pen& pen, double y, const WallBoard::Refused& refused) const {
  const double room = right_ - axis_.left() - 2;
  std::string told = words_("board_refused", {refused.reason});
  if (told.back() != '.') told += '.';
  if (!refused.opens_with.empty()) told += " " + words_("board_opens", {refused.opens_with});
  if (!close()) return 6 + pen.caution(axis_.left() + 2, y + 6, room, told) - lead(reading) + 4;
  constexpr double sign = 5.8, indent = 8.5;
  pen.sign(axis_.left() + 2, y + 6.4, Danger::any, sign);
  return 1.6 + std::max(6.2, pen.text(axis_.left() + 2 + indent, y + 4.6, told, small_name, Side::left,
                                      room - indent));
}

BoardRow BoardRows::refused(Pen& learning, const WallBoard::Refused& refused) const {
  const double height =
      std::max({close() ? height_ : height_ - 3, caption(learning, 0, refused.unit, refused.kind),
                refusal(learning, 0, refused)});
  return {height, [this, &refused, height](Pen& pen, double y) {
            pen.area(axis_.left() - 1, y + 0.3, right_ - axis_.left() + 1, height - 0.6, Ink::white);
            pen.line(left_edge, y, right_, y);
            caption(pen, y, refused.unit, refused.kind);
            refusal(pen, y, refused);
          }};
}

}  // namespace dampward::papers
