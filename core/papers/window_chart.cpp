#include <algorithm>
#include <cmath>

#include "core/papers/detail/chart_page.h"

namespace dampward::papers {
namespace {

std::string degrees(double figure) {
  return with_unit(figure, "°C");
}

// The last curve whose whole time is left above a point; none: not even the first is.
std::optional<Duration> curve_above(const WindowChartSheet& sheet, const charts::WindowScales& scales,
                                    Temperature surface, Temperature air) {
  std::optional<Duration> found;
  for (const Duration time : charts::curves_of(sheet.chart)) {
    if (charts::drawn(sheet.chart, scales, time, air) >= surface) found = time;
  }
  return found;
}

bool no_clock(const WindowChartSheet& sheet, const charts::WindowScales& scales, Temperature surface,
              Temperature air) {
  return surface <= charts::drawn(sheet.chart, scales, std::nullopt, air);
}

// Whose curves they are, and how many times as long the others stay warm.
std::string quickness(const WindowChartSheet& sheet, const Words& words) {
  std::string told = words("chart_window_quick", {sheet.quickest});
  std::string others;
  for (const WindowChartSheet::Slower& other : sheet.slower)
    others += (others.empty() ? "" : ", ") + other.kind + " " + figure_text(other.times);
  return others.empty() ? told : told + " " + words("chart_window_slower", {others});
}

ChartWords told(const WindowChartSheet& sheet, const Words& words, const charts::WindowScales* scales) {
  const charts::WindowChart& chart = sheet.chart;
  const Temperature surface = charts::floor_of(chart, sheet.example_air, sheet.example_humidity);
  const std::string hottest = degrees(down_to(chart.rules.hottest.celsius(), 0.1));
  std::string minutes = words("chart_window_example_none");
  if (scales != nullptr) {
    if (no_clock(sheet, *scales, surface, sheet.example_air))
      minutes = words("chart_window_example_free");
    else if (const auto curve = curve_above(sheet, *scales, surface, sheet.example_air))
      minutes = words("chart_window_example_minutes", {with_unit(curve->in(minute), "min")});
  }
  ChartWords told;
  told.name = words("chart_window");
  told.how = words("chart_window_how");
  told.example = words("chart_window_example", {degrees(sheet.example_air.celsius()),
                                                with_unit(sheet.example_humidity.percent(), "%"),
                                                degrees(up_to(surface.celsius(), 0.1)), minutes});
  told.zones = {{{words("chart_do_not_coat"), words("chart_under")},
                 {words("chart_coat"), words("chart_between")},
                 {words("chart_wait"), words("chart_over", {hottest})}}};
  told.notes = {words("chart_window_count", {hottest}), quickness(sheet, words)};
  if (sheet.coats > 0)
    told.notes.push_back(words("chart_window_work", {figure_text(sheet.coats),
                                                     with_unit(up_to(sheet.flashes.in(minute), 1), "min")}));
  const double misread = scales == nullptr ? 0.5 : charts::worst_misreading(scales->ruler()).most;
  told.error = words("chart_window_error", {with_unit(up_to(misread, 0.1), "K")});
  return told;
}

charts::Frame frame_in(const charts::Frame& all) {
  return {32, all.top + 26, 164, all.height - 41};
}

// The curves of the field, each named near its cold end, and the line under which no clock runs.
void field(ChartPage& page, const WindowChartSheet& sheet, const charts::WindowScales& scales,
           const charts::Frame& frame) {
  const charts::Scale& room = scales.room.scale;
  const charts::Scale& surface = scales.surface.scale;
  const double left = room.at(room.low()).x;
  const auto curve = [&](std::optional<Duration> time) {
    Stroke stroke{{}, line_width, Ink::black, false, false, false};
    if (!time) stroke.width = thick;
    for (int i = 0; i <= 80; ++i) {
      const double air = room.low() + (room.high() - room.low()) * i / 80.0;
      const double at = charts::drawn(sheet.chart, scales, time, Temperature::celsius(air)).celsius();
      if (at < surface.low()) continue;
      stroke.points.emplace_back(room.at(air).x, surface.at(at).y);
    }
    return stroke;
  };
  const double name_at = room.low() + 0.12 * (room.high() - room.low());
  double last = frame.top;
  for (const Duration time : charts::curves_of(sheet.chart)) {
    const Stroke stroke = curve(time);
    const double at = charts::drawn(sheet.chart, scales, time, Temperature::celsius(name_at)).celsius();
    const double y = at < surface.low() ? frame.foot() + 10 : surface.at(at).y;
    // No curve without its name.
    if (stroke.points.size() < 2 || y - last < 5 || y > frame.foot() - 2) continue;
    page.pen().stroke(stroke);
    page.pen().text(room.at(name_at).x, y + 1.3, with_unit(time.in(minute), "min"), {tiny, 700}, Side::middle,
                    0, 0.7);
    last = y;
  }
  const Stroke free = curve(std::nullopt);
  if (free.points.size() > 1) page.pen().stroke(free);
  page.label(frame.right() - 3, frame.foot() - 8, page.words()("chart_window_free"), {tiny, 700, Ink::petrol},
             Side::right, 40, 2, 0.7);
  page.pen().line(left, frame.foot(), frame.right(), frame.foot(), line_width);
}

}  // namespace

Result<Page> window_chart(const WindowChartSheet& sheet, const Paper& paper, const Words& words,
                          const Measure& measure) {
  const charts::WindowChart& chart = sheet.chart;
  charts::Frame frame;
  {
    ChartPage trial(paper, words, measure);
    frame = frame_in(trial.lay(told(sheet, words, nullptr), sheet.of));
  }
  if (frame.height < 60) frame.height = 60;
  const charts::WindowScales scales = charts::placed(chart, frame);
  ChartPage page(paper, words, measure);
  const charts::Frame all = page.lay(told(sheet, words, &scales), sheet.of);

  const double air_x = scales.air.scale.at(scales.air.scale.low()).x;
  const double surface_x = scales.surface.scale.at(scales.surface.scale.low()).x;
  page.title(frame.left, all.top + 6.5, 14, words("chart_window_humidity"));
  page.title(air_x, all.top + 6.5, 11, words("chart_window_air"));
  page.title(surface_x, all.top + 6.5, 14, words("chart_window_surface"));
  page.title(0.5 * (surface_x + 16 + frame.right()), all.top + 6.5, 38, words("chart_window_minutes"));
  const double air = sheet.example_air.celsius(), humid = sheet.example_humidity.percent();
  page.ruler(scales.ruler(), humid, air);
  const Temperature floor = charts::floor_of(chart, sheet.example_air, sheet.example_humidity);
  const bool on_the_field = floor.celsius() >= scales.surface.scale.low() && floor <= chart.rules.hottest &&
                            air <= scales.room.scale.high();
  const charts::Place start = scales.surface.at(floor), foot = scales.room.at(sheet.example_air);
  const charts::Place point{foot.x, start.y};
  if (on_the_field) {
    page.dashes(start, point);
    page.dashes(foot, point);
    page.dot(point);
  }
  page.scale(scales.humidity.scale, ChartPage::On::left);
  page.scale(scales.air.scale, ChartPage::On::left);
  page.scale(scales.surface.scale, ChartPage::On::left);
  field(page, sheet, scales, frame);
  page.scale(scales.room.scale, ChartPage::On::bottom, false);
  const double field_left = scales.room.scale.at(scales.room.scale.low()).x;
  page.label(0.5 * (field_left + frame.right()), frame.foot() + 13, words("chart_window_room"),
             {reading, 600, Ink::petrol}, Side::middle, frame.right() - field_left, 1);
  page.wall(surface_x - 0.6, frame.right(), frame.top, true, 0, Side::left, 0, "");
  page.label(frame.right(), frame.top - 4,
             words("chart_window_over", {degrees(down_to(chart.rules.hottest.celsius(), 0.1))}), {tiny, 700},
             Side::right, 60, 1);

  const auto curve = curve_above(sheet, scales, floor, sheet.example_air);
  if (on_the_field && curve && !no_clock(sheet, scales, floor, sheet.example_air))
    page.answer(point.x + 3, point.y + 8, figure_text(curve->in(minute)), "min", Side::left);
  return std::move(page).done();
}

}  // namespace dampward::papers
