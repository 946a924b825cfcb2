#include "core/papers/detail/chart_page.h"

#include <algorithm>
#include <cmath>

#include "core/base/format.h"
#include "core/charts/ticks.h"

namespace dampward::papers {
namespace {

constexpr Type small{tiny, 500}, named{reading, 600}, over{doing, 600, Ink::petrol};
constexpr double room = right_edge - left_edge;
// Under this height, names and all, scales are too crowded to be read with a ruler.
constexpr double least_height = 120;
// The strip: two walls and what lies between.
constexpr double from = 80, to = 136, gap = 5, outer = from - gap - left_edge;
// From one note to the next.
constexpr double between = 0.8;

bool straight(const charts::Scale& scale) {
  const charts::Place a = scale.at(scale.low()), b = scale.at(scale.high());
  const charts::Place middle = scale.at(0.5 * (scale.low() + scale.high()));
  const double length = std::hypot(b.x - a.x, b.y - a.y);
  return std::abs((b.x - a.x) * (middle.y - a.y) - (b.y - a.y) * (middle.x - a.x)) < 0.02 * length;
}

}  // namespace

std::string figure_text(double figure) {
  std::string text = fixed(figure, 4);
  while (text.back() == '0') text.pop_back();
  if (text.back() == '.') text.pop_back();
  const std::size_t point = text.find('.');
  if ((point == std::string::npos ? text.size() : point) > 4)
    text.insert((point == std::string::npos ? text.size() : point) - 3, thin_space);
  return text;
}

std::string with_unit(double figure, const std::string& unit) {
  return figure_text(figure) + thin_space + unit;
}

double up_to(double figure, double step) {
  return step * std::ceil(figure / step - 1e-6);
}
double down_to(double figure, double step) {
  return step * std::floor(figure / step + 1e-6);
}

bool ChartPage::holds(const std::string& words, const Type& type, double width, int lines) const {
  double widest = 0;
  for (std::size_t start = 0; start <= words.size();) {
    const std::size_t end = std::min(words.find(' ', start), words.size());
    widest = std::max(widest, pen_.width_of(words.substr(start, end - start), type));
    start = end + 1;
  }
  return widest <= width && pen_.height_of(words, type, width) <= lines * lead(type.points) + 1e-6;
}

void ChartPage::fits(const std::string& words, const Type& type, double width, int lines) {
  if (holds(words, type, width, lines)) return;
  too_long_.push_back({{"wall chart"},
                       "\"" + words + "\", too long for its place",
                       format("words that fit {} of {} mm", lines == 1 ? "a line" : format("{} lines", lines),
                              fixed(width, 0)),
                       "Name it shorter; a wall chart is one page."});
}

double ChartPage::strip(double y, const std::array<ChartWords::Zone, 3>& zones, bool draw) {
  const auto act_type = [&](const std::string& act, double width) {
    for (const double size : {value_size, doing})
      if (pen_.width_of(act, {size, 700}) <= width) return Type{size, 700};
    return Type{reading, 700};
  };
  double below = 0;
  for (std::size_t i = 0; i < 3; ++i) {
    const double width = i == 1 ? to - from - 2 : outer;
    below = std::max(below, pen_.height_of(zones[i].when, small, width));
    if (!draw) continue;
    Type type = act_type(zones[i].act, width);
    if (i == 1) type.ink = Ink::petrol;
    const double x = i == 0 ? from - gap : i == 1 ? 0.5 * (from + to) : to + gap;
    const Side side = i == 0 ? Side::right : i == 1 ? Side::middle : Side::left;
    fits(zones[i].act, type, width, 1);
    fits(zones[i].when, small, width, 2);
    pen_.text(x, y + 7.8, zones[i].act, type, side);
    pen_.text(x, y + 15.8, zones[i].when, small, side, width);
  }
  if (draw) {
    pen_.box(from, y + 0.5, to - from, 10.5, hair);
    for (const double x : {from, to}) {
      pen_.line(x, y - 0.5, x, y + 12, wall_width);
      pen_.hatch(x == from ? x - 3 : x, y - 0.5, 3, 12.5, 1.2);
    }
  }
  return 12.4 + below;
}

charts::Frame ChartPage::lay(const ChartWords& told, const ChartFor& of) {
  const double waterline = head(pen_, {words_("wall_chart"), of.shop, told.name, "", told.how, "", "", ""});
  if (pen_.width_of(told.name, {name_size, 700}) > room) fits(told.name, {clock_size, 700}, room, 1);
  pen_.line(left_edge, waterline, right_edge, waterline, wall_width, Ink::petrol);

  const std::string wet = words_("chart_never_wet");
  const std::string whose =
      words_("chart_for", {of.lacquer, of.station, of.weather, fixed(std::floor(100 * of.covered), 0)});
  const Type example{reading, 600, Ink::petrol}, note{reading, 400}, error{reading, 600};
  double height = 4 + pen_.height_of(told.example, example, room) + 1.5 + strip(0, told.zones, false) + 6 +
                  pen_.height_of(wet, error, room - 10.5) + 1.5;
  for (const std::string& line : told.notes) height += pen_.height_of(line, note, room) + between;
  height += pen_.height_of(told.error, error, room) + 0.5 + pen_.height_of(whose, small, room);

  double y = pen_.bottom() - height + 4;
  const charts::Frame frame{left_edge, waterline, room, y - 4 - waterline};
  y += pen_.text(left_edge, y + 3.5, told.example, example, Side::left, room) + 1.5;
  y += strip(y, told.zones, true) + 6;
  y += pen_.caution(left_edge, y + 3, room, wet) + 1.5;
  for (const std::string& line : told.notes)
    y += pen_.text(left_edge, y + 3.5, line, note, Side::left, room) + between;
  y += pen_.text(left_edge, y + 3.5, told.error, error, Side::left, room) + 0.5;
  pen_.text(left_edge, y + 3, whose, small, Side::left, room);

  foot(pen_, words_, words_("wall_chart") + "   " + told.name,
       of.id.empty() ? "" : words_("chart_id", {of.id}));
  if (frame.height < least_height) {
    std::vector<std::string> all = told.notes;
    all.insert(all.end(), {told.how, told.example, told.error, whose, wet});
    const auto longest = std::max_element(all.begin(), all.end(),
                                          [](const auto& a, const auto& b) { return a.size() < b.size(); });
    too_long_.push_back({{"wall chart"},
                         format("words that leave {} mm for the scales; the longest are \"{}\"",
                                fixed(frame.height, 0), *longest),
                         format("{} mm or more, on one page", fixed(least_height, 0)),
                         "Shorten names of lacquer, shop or station, or take --paper a4."});
  }
  return frame;
}

void ChartPage::title(double x, double y, double half_slot, const std::string& words) {
  // Two lines, or three smaller ones; the last stands on one baseline for all, next to its scale.
  const double width = 2 * half_slot, foot = y + 2 * lead(reading);
  Type type = over;
  if (!holds(words, type, width, 2)) type.points = reading;
  fits(words, type, width, 3);
  pen_.text(x, foot - pen_.height_of(words, type, width) + lead(type.points), words, type, Side::middle,
            width);
}

void ChartPage::label(double x, double y, const std::string& words, const Type& type, Side side, double width,
                      int lines, double halo) {
  fits(words, type, width, lines);
  pen_.text(x, y, words, type, side, width, halo);
}

void ChartPage::scale(const charts::Scale& scale, On side, bool line) {
  if (line) {
    Stroke along{{}, line_width, Ink::black, false, false, false};
    const int steps = straight(scale) ? 1 : 60;
    for (int i = 0; i <= steps; ++i) {
      const charts::Place place =
          scale.at(scale.low() + (scale.high() - scale.low()) * i / static_cast<double>(steps));
      along.points.emplace_back(place.x, place.y);
    }
    pen_.stroke(along);
  }
  const double apart = side == On::bottom ? 9 : 6.5;
  for (const charts::Tick& tick : charts::ticks_of(scale, apart)) {
    const charts::Place place = scale.at(tick.figure);
    const bool big = tick.kind == charts::TickKind::named;
    const double length = big ? 4 : tick.kind == charts::TickKind::half ? 2.8 : 1.6;
    const double way = side == On::left ? -1 : 1;
    const bool under = side == On::bottom;
    pen_.line(place.x, place.y, place.x + (under ? 0 : way * length), place.y + (under ? length : 0),
              big ? line_width : hair);
    if (!big) continue;
    const std::string words = figure_text(tick.figure);
    if (under)
      pen_.text(place.x, place.y + 8.2, words, named, Side::middle, 0, 0.4);
    else
      pen_.text(place.x + way * 5.5, place.y + 1.6, words, named, side == On::left ? Side::right : Side::left,
                0, 0.4);
  }
}

void ChartPage::dot(const charts::Place& place) {
  dots_.push_back(place);
}

void ChartPage::dashes(const charts::Place& a, const charts::Place& b) {
  pen_.stroke({{{a.x, a.y}, {b.x, b.y}}, 0.5, Ink::petrol, false, true, false});
}

void ChartPage::ruler(const charts::Alignment& chart, double on_first, double on_second) {
  const auto read = chart.read(on_first, on_second);
  std::vector<charts::Place> places = {chart.first.at(on_first), chart.second.at(on_second)};
  if (read) places.push_back(chart.answer.at(*read));
  std::sort(places.begin(), places.end(), [](const auto& a, const auto& b) { return a.x < b.x; });
  dashes(places.front(), places.back());
  for (const charts::Place& place : places) dot(place);
}

void ChartPage::answer(double x, double y, const std::string& number, const std::string& unit, Side side) {
  pen_.text(x, y, figure(number, unit), {value_size, 700, Ink::petrol}, side, 0, 0.8);
}

void ChartPage::wall(double x1, double x2, double y, bool above, double words_x, Side side, double width,
                     const std::string& words) {
  pen_.hatch(x1, above ? y - 2.2 : y, x2 - x1, 2.2, 1.3);
  pen_.line(x1, y, x2, y, wall_width);
  if (!words.empty()) label(words_x, above ? y - 0.4 : y + 2.6, words, {tiny, 700}, side, width, 2, 0.6);
}

Result<Page> ChartPage::done() && {
  if (!too_long_.empty()) return too_long_;
  for (const charts::Place& place : dots_) pen_.disc(place.x, place.y, 1.4, Ink::petrol);
  return std::move(page_);
}

}  // namespace dampward::papers
