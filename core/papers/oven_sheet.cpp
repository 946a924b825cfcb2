#include "core/papers/oven_sheet.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/base/format.h"
#include "core/papers/figures.h"
#include "core/papers/pen.h"
#include "core/papers/step_words.h"

namespace dampward::papers {
namespace {

constexpr Type small{tiny, 500}, small_name{tiny, 600}, read{reading, 400}, clock_type{clock_size, 700};
constexpr std::size_t most_rows = 8;
constexpr double row = 10.5;
// While the load warms nobody knows its curve better than this share of the rise: an estimate.
constexpr double warming_spread = 0.15;

std::string whole(double figure) {
  return fixed(figure, 0);
}
std::string at_most(Temperature t) {
  return whole(down(t));
}
std::string at_least(Temperature t) {
  return whole(up(t));
}

class Drawing {
 public:
  Drawing(const OvenSheet& sheet, Page& page, const Words& words, const Measure& measure)
      : sheet_(sheet), words_(words), pen_(page, measure) {}

  void draw() {
    double y = head_and_moments();
    y = load_and_limit(y + 1);
    // A full page takes from the curve first, then from the rows: the moments, limits and remedies stay.
    const double last = pen_.height_of(last_words(), {reading, 600}, right_edge - left_edge) + 4;
    const double below = pen_.bottom() - last - (y + 3 + 5.5 + 7 + 2.5);
    const double height = std::clamp(below - most_rows * row, 30.0, 42.0);
    const auto rows = static_cast<std::size_t>(std::clamp((below - height) / row, 3.0, most_rows * 1.0));
    y = curve(y + 3, height);
    y = table(y + 7, rows);
    y += pen_.text(left_edge, y + 5, last_words(), {reading, 600}, Side::left, right_edge - left_edge);
    notes(pen_, y + 3, words_("notes"));
    foot(pen_, words_, words_("load", {sheet_.load}) + "   " + words_("oven_sheet"), sheet_.plan);
  }

 private:
  std::string clock(Instant time) const { return clock_text(sheet_.clock.local(time)); }
  Duration since_in(Instant time) const {
    return std::chrono::duration<double>(time - sheet_.in).count() * second;
  }
  Instant after_in(Duration time) const {
    return sheet_.in + std::chrono::minutes(static_cast<long>(std::lround(time.in(minute))));
  }

  double head_and_moments() {
    const Date day(std::chrono::floor<std::chrono::days>(sheet_.clock.local(sheet_.in)));
    const double waterline =
        head(pen_, {words_("oven_sheet") + " " + iso_text(day), sheet_.shop, words_("load", {sheet_.load}),
                    sheet_.oven, words_("weakest_sets_it", {sheet_.weakest + ", " + sheet_.weakest_unit}),
                    words_("set_point"), at_most(sheet_.set), "°C"});
    std::vector<Moment> moments = {
        {words_("door_shut"), clock(sheet_.in)},
        {words_("hold_starts"), clock(sheet_.hold_starts)},
        {words_(sheet_.stepped_to ? "step_down" : "hold_ends"), clock(sheet_.hold_ends)}};
    // Every unit's way out; of many, or where a serial would have to be broken, the first and the last.
    constexpr double column = 28;
    const auto wide = [&](const OvenSheet::Out& unit) {
      return pen_.width_of(words_("out", {unit.unit}), small_name) > column;
    };
    if (sheet_.units.size() <= 3 && std::none_of(sheet_.units.begin(), sheet_.units.end(), wide)) {
      for (const OvenSheet::Out& unit : sheet_.units)
        moments.push_back({words_("out", {unit.unit}), clock(unit.at)});
    } else {
      moments.push_back({words_("first_out"), clock(sheet_.units.front().at)});
      moments.push_back({words_("last_out"), clock(sheet_.units.back().at)});
    }
    return waterline + pen_.moments(waterline, moments);
  }

  // The load at the left, its limit and hold at the right; below one another where a serial takes more room. A serial is never cut.
  double load_and_limit(double y) {
    constexpr double middle = 90;
    const bool narrow =
        std::all_of(sheet_.units.begin(), sheet_.units.end(), [&](const OvenSheet::Out& unit) {
          return pen_.width_of(unit.unit, small_name) < middle - 6 - left_edge;
        });
    if (narrow) return std::max(load(y, middle - 4), limit_and_hold(y, middle)) + 2;
    return limit_and_hold(load(y, right_edge) + 3, left_edge) + 2;
  }

  double load(double y, double right) {
    double low = y + 4.5;
    const double room = right - left_edge;
    pen_.text(left_edge, low, words_("in_this_load"), small_name);
    for (const OvenSheet::Out& unit : sheet_.units) {
      const Type serial = pen_.width_of(unit.unit, {doing, 600}) < room - 2 ? Type{doing, 600} : small_name;
      low += 6;
      low += pen_.text(left_edge, low, unit.unit, serial, Side::left, room) - lead(serial.points);
      const std::string what = unit.kind + ", " + words_("out", {clock(unit.at)});
      const double beside = left_edge + pen_.width_of(unit.unit, serial) + 3;
      const bool fits = beside + pen_.width_of(what, small) < right;
      if (!fits) low += lead(tiny);
      low += pen_.text(fits ? beside : left_edge, low, what, small, Side::left, fits ? 0 : room) - lead(tiny);
    }
    return low;
  }

  double limit_and_hold(double y, double left) {
    const double room = right_edge - left;
    y += pen_.triple(
        left, y, room,
        {at_least(sheet_.peak), whole(down((sheet_.limit - sheet_.peak).in(kelvin))), at_most(sheet_.limit),
         "°C", "K", words_("peak"), words_("spare"), words_("limit_of", {sheet_.weakest})});
    std::string hold = words_(
        "hold", {time_taken(sheet_.hold), degrees(up(sheet_.holds_from)), time_taken(sheet_.hold_nominal)});
    if (sheet_.rule) hold += " " + words_("rule", {time_taken(*sheet_.rule)});
    y += pen_.text(left, y + 5, hold, read, Side::left, room);
    return y + pen_.caution(left, y + 6.5, room, words_("nothing_wet")) + 4;
  }

  // The curve a thermometer amid the slowest unit follows, under the wall it may never reach.
  double curve(double y, double height) {
    constexpr double x = left_edge + 13, width = 135;
    const Duration end = std::max(since_in(sheet_.units.back().at), since_in(sheet_.hold_ends));
    const double lowest = 10 * std::floor(sheet_.slowest.at(Duration{}).celsius() / 10);
    const double highest = 10 * std::ceil((sheet_.limit.celsius() + 2) / 10);
    const auto across = [&](Duration t) { return x + width * (t / end); };
    const auto level = [&](Temperature t) {
      return y + height * (highest - t.celsius()) / (highest - lowest);
    };
    for (double mark = lowest; mark <= highest; mark += 10) {
      const double at = level(Temperature::celsius(mark));
      pen_.line(x, at, x + width, at, mark == lowest ? line_width : hair);
      pen_.text(x - 1.5, at + 1.3, mark == highest ? degrees(mark) : whole(mark), small, Side::right);
    }
    const int step = end > 10 * hour ? 2 : 1;
    for (int i = 0; i * hour < end; i += step) {
      const LocalTime first = std::chrono::ceil<std::chrono::hours>(sheet_.clock.local(sheet_.in));
      const Instant full = sheet_.clock.instant(first + std::chrono::hours(i));
      if (since_in(full) > end) break;
      const double at = across(since_in(full));
      pen_.line(at, y + height, at, y + height + 1.5);
      pen_.text(at, y + height + 5.5, clock(full), small, Side::middle);
    }
    pen_.wall_line(x, x + width, level(sheet_.limit), words_("limit_line", {degrees(down(sheet_.limit))}));
    Stroke slowest{{}, thick, Ink::petrol, false, false, false};
    for (int i = 0; i <= 120; ++i) {
      const Duration t = std::min(i / 120.0 * end, since_in(sheet_.hold_ends));
      slowest.points.emplace_back(across(t), level(sheet_.slowest.at(t)));
      if (t >= since_in(sheet_.hold_ends)) break;
    }
    pen_.stroke(slowest);
    const double from = across(since_in(sheet_.hold_starts)), to = across(since_in(sheet_.hold_ends));
    const double bar = level(sheet_.slowest.at(since_in(sheet_.hold_starts))) + 7;
    pen_.line(from, bar, to, bar, line_width);
    for (const double end_of : {from, to}) pen_.line(end_of, bar - 2, end_of, bar + 2, line_width);
    pen_.text((from + to) / 2, bar + 1.3, words_("hold_word"), small_name, Side::middle, 0, 2);
    pen_.text(x + width - 2, bar + 8, words_("read_this_one"), {tiny, 600, Ink::petrol}, Side::right, 0, 1);
    return y + height + 5.5;
  }

  std::vector<Instant> reading_times(std::size_t rows) const {
    const Duration warm = since_in(sheet_.hold_starts), dry = since_in(sheet_.hold_ends);
    std::vector<Instant> times = {after_in(0.5 * warm), sheet_.hold_starts};
    const double half_hours = std::ceil((dry - warm) / (0.5 * hour) / static_cast<double>(rows - 2));
    const Duration gap = std::max(1.0, half_hours) * 0.5 * hour;
    for (Duration t = warm + gap; t < dry - 10 * minute; t += gap) times.push_back(after_in(t));
    times.push_back(sheet_.hold_ends);
    return times;
  }

  std::string expected(Instant time) const {
    const Duration t = since_in(time);
    const Temperature there = sheet_.slowest.at(t), first = sheet_.slowest.at(Duration{});
    TemperatureStep spread = sheet_.spread;
    if (time < sheet_.hold_starts) spread = std::max(spread, warming_spread * (there - first));
    if (time == sheet_.hold_starts) return words_("from", {degrees(up(sheet_.holds_from))});
    return words_("to", {at_least(there - spread), degrees(down(std::min(there + spread, sheet_.peak)))});
  }

  double table(double y, std::size_t rows) {
    constexpr double expect = left_edge + 31, pencil = 92, off = 123;
    pen_.text(left_edge, y, words_("at"), small_name);
    pen_.text(expect, y, words_("expect"), small_name);
    pen_.text(pencil, y, words_("you_read"), small_name);
    pen_.text(off, y, words_("if_it_is_off"), small_name);
    const double top = y + 2.5, room = right_edge - off;
    // Before the hold: until it has started; then the hold itself. Each has its remedies beside it.
    double text = top + 6;
    text +=
        pen_.text(off, text, words_("lower", {degrees(up(sheet_.holds_from))}), read, Side::left, room) + 1;
    text += pen_.text(off, text, words_("really_started"), read, Side::left, room);
    const std::vector<Instant> times = reading_times(rows);
    const double start = std::max(top + 2 * row, text - 3);
    double y_row = top;
    for (std::size_t i = 0; i < times.size(); ++i) {
      if (i == 2) y_row = start;
      const bool group = i == 0 || i == 2;
      pen_.line(left_edge, y_row, group ? right_edge : pencil + 27, y_row, hair);
      if (group) pen_.line(left_edge, y_row, left_edge + 25, y_row, thick, Ink::petrol);
      pen_.text(left_edge, y_row + 8.5, clock(times[i]), clock_type);
      pen_.text(expect, y_row + 8.2, expected(times[i]), {doing, 500});
      pen_.text(pencil + 25, y_row + 8.2, "°C", small, Side::right);
      y_row += row;
    }
    text = start + 6;
    text +=
        pen_.text(off, text, words_("under", {at_least(sheet_.set - sheet_.spread), at_least(sheet_.peak)}),
                  read, Side::left, room);
    if (sheet_.stepped_to)
      text += pen_.text(off, text + 1, words_("stepped", {degrees(down(*sheet_.stepped_to))}), read,
                        Side::left, room);
    const double end = std::max(y_row, text - 3);
    pen_.line(left_edge, end, right_edge, end, hair);
    for (const double x : {pencil - 1.5, pencil + 27}) pen_.line(x, top, x, end, hair);
    return end;
  }

  std::string last_words() const {
    return (sheet_.stays_damp.empty() ? "" : words_("stays_damp", {sheet_.stays_damp}) + " ") +
           words_("no_spores");
  }

  const OvenSheet& sheet_;
  const Words& words_;
  Pen pen_;
};

}  // namespace

Page oven_sheet(const OvenSheet& sheet, const Paper& paper, const Words& words, const Measure& measure) {
  Page page{paper, {}};
  Drawing(sheet, page, words, measure).draw();
  return page;
}

}  // namespace dampward::papers
