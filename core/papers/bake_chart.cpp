#include <algorithm>
#include <cmath>

#include "core/drying/load_run.h"
#include "core/papers/detail/chart_page.h"

namespace dampward::papers {
namespace {

// "2 h 10 min", upwards: a hold is never shorter than told.
std::string time_text(Duration time) {
  const int minutes = static_cast<int>(std::ceil(time.in(minute)-1e-6));
  const std::string rest = with_unit(minutes % 60, "min");
  if (minutes < 60) return rest;
  return with_unit(minutes / 60, "h") + (minutes % 60 == 0 ? "" : thin_space + rest);
}

// What a usual sheet needs of the hold, least and most over the settings, in percent.
std::pair<double, double> usual_share(const charts::BakeChart& chart) {
  double least = 1, most = 0;
  for (int i = 0; i <= 10; ++i) {
    const Temperature set = chart.set_low + i / 10.0 * (chart.set_high - chart.set_low);
    const double share = charts::hold_of(chart, set, 1 * millimetre, drying::Side::typical) /
                         charts::hold_of(chart, set, 1 * millimetre);
    least = std::min(least, share);
    most = std::max(most, share);
  }
  return {100 * least, 100 * most};
}

ChartWords told(const BakeChartSheet& sheet, const Words& words, double misread) {
  const charts::BakeChart& chart = sheet.chart;
  const std::string oven = chart.oven.empty() ? words("chart_bake_any_oven") : chart.oven;
  const auto kelvins = [](TemperatureStep step) { return with_unit(up_to(step.in(kelvin), 1), "K"); };
  const auto usual = usual_share(chart);
  ChartWords told;
  told.name = words("chart_bake");
  told.how = words("chart_bake_how");
  told.example = words(
      "chart_bake_example",
      {with_unit(sheet.example_set.celsius(), "°C"), with_unit(sheet.example_thickness.in(millimetre), "mm"),
       time_text(charts::hold_of(chart, sheet.example_set, sheet.example_thickness))});
  told.zones = {{{words("chart_bake_cool"),
                  words("chart_bake_cool_when", {with_unit(up_to(chart.set_low.celsius(), 1), "°C")})},
                 {words("chart_bake_bake"), words("chart_bake_bake_when")},
                 {words("chart_bake_hot"),
                  words("chart_bake_hot_when", {with_unit(down_to(chart.set_high.celsius(), 1), "°C")})}}};
  told.notes = {words("chart_bake_count",
                      {with_unit(std::floor((chart.evenness + drying::reached_within).in(kelvin)), "K")}),
                words("chart_bake_deep", {kelvins(chart.margin)}),
                words("chart_bake_oven", {oven, kelvins(chart.excess), kelvins(chart.evenness)})};
  told.error =
      words("chart_bake_error", {figure_text(up_to(100 * misread, 1)), figure_text(std::floor(usual.first)),
                                 figure_text(std::ceil(usual.second))});
  return told;
}

charts::Frame frame_in(const charts::Frame& all) {
  return {57, all.top + 27, 123, all.height - 35};
}

}  // namespace

Result<Page> bake_chart(const BakeChartSheet& sheet, const Paper& paper, const Words& words,
                        const Measure& measure) {
  const charts::BakeChart& chart = sheet.chart;
  charts::Frame frame;
  {
    ChartPage trial(paper, words, measure);
    frame = frame_in(trial.lay(told(sheet, words, 0.1), sheet.of));
  }
  if (frame.height < 60) frame.height = 60;
  const charts::BakeScales scales = charts::placed(chart, frame);
  ChartPage page(paper, words, measure);
  const charts::Frame all =
      page.lay(told(sheet, words, charts::worst_misreading(scales.ruler()).share), sheet.of);

  const double hold_x = scales.hold.scale.at(scales.hold.scale.low()).x;
  page.title(frame.left - 18.5, all.top + 6.5, 20, words("chart_bake_limit"));
  page.title(frame.left + 15, all.top + 6.5, 12, words("chart_bake_set"));
  page.title(hold_x, all.top + 6.5, 11.5, words("chart_bake_hold"));
  page.title(frame.right() + 1, all.top + 6.5, 16, words("chart_bake_thickness"));
  page.ruler(scales.ruler(), sheet.example_set.celsius(), sheet.example_thickness.in(millimetre));
  page.scale(scales.limit.scale, ChartPage::On::left);
  page.scale(scales.set.scale, ChartPage::On::right);
  page.scale(scales.hold.scale, ChartPage::On::left);
  page.scale(scales.thickness.scale, ChartPage::On::right);
  const charts::Place cool = scales.set.at(chart.set_low), hot = scales.set.at(chart.set_high);
  page.wall(cool.x - 12, cool.x + 12, cool.y - 3.5, true, 0, Side::left, 0, "");
  page.wall(hot.x - 12, hot.x + 12, hot.y + 3.5, false, 0, Side::left, 0, "");

  const Duration hold = charts::hold_of(chart, sheet.example_set, sheet.example_thickness);
  const double y = scales.hold.at(hold).y;
  const bool falls = scales.thickness.at(sheet.example_thickness).y > scales.set.at(sheet.example_set).y;
  page.answer(hold_x + 3, y + (falls ? -3 : 9), figure_text(up_to(hold.in(hour), 0.1)), "h", Side::left);
  return std::move(page).done();
}

}  // namespace dampward::papers
