#include <algorithm>
#include <cmath>

#include "core/papers/detail/chart_page.h"
#include "core/room_air/separation.h"

namespace dampward::papers {
namespace {

// Two figures that count, upwards: fresh air is never less than needed.
double two_figures_up(double figure) {
  const double step = std::pow(10, std::floor(std::log10(figure)) - 1);
  return up_to(figure, step);
}

VolumeFlow against_fire(const FanChartSheet& sheet) {
  return sheet.example_people * sheet.chart.fire * sheet.example_rate;
}

ChartWords told(const FanChartSheet& sheet, const Words& words, double misread) {
  const charts::FanChart& chart = sheet.chart;
  const auto air = [](VolumeFlow flow) {
    return with_unit(two_figures_up(flow.in(cubic_metre_per_minute)), "m³/min");
  };
  const VolumeFlow fire = against_fire(sheet);
  const VolumeFlow breathe = sheet.example_people * chart.breathe * sheet.example_rate;
  const std::string people = sheet.example_people > 1
                                 ? words("chart_fan_persons", {figure_text(sheet.example_people)})
                                 : words("chart_fan_person");
  ChartWords told;
  told.name = words("chart_fan");
  told.how = words("chart_fan_how");
  told.example = words("chart_fan_example", {people, with_unit(sheet.example_rate.in(litre / hour), "L"),
                                             air(fire), air(breathe)});
  told.zones = {{{words("chart_do_not_coat"), words("chart_fan_less_when")},
                 {words("chart_fan_coat"), words("chart_fan_coat_when")},
                 {words("chart_fan_mask"), words("chart_fan_mask_when")}}};
  told.notes = {words("chart_fan_hot", {with_unit(std::ceil(room_air::clear_across.in(metre)), "m")}),
                words("chart_fan_share", {figure_text(std::round(100 * sheet.fire_share)),
                                          with_unit(up_to(sheet.warm.celsius(), 1), "°C"),
                                          figure_text(std::round(100 * sheet.mixing))})};
  told.error = words("chart_fan_error", {figure_text(up_to(100 * misread, 1))});
  return told;
}

charts::Frame frame_in(const charts::Frame& all) {
  return {38, all.top + 26, 140, all.height - 31};
}

}  // namespace

Result<Page> fan_chart(const FanChartSheet& sheet, const Paper& paper, const Words& words,
                       const Measure& measure) {
  const charts::FanChart& chart = sheet.chart;
  charts::Frame frame;
  {
    ChartPage trial(paper, words, measure);
    frame = frame_in(trial.lay(told(sheet, words, 0.1), sheet.of));
  }
  if (frame.height < 60) frame.height = 60;
  const charts::FanScales scales = charts::placed(chart, frame);
  ChartPage page(paper, words, measure);
  const charts::Frame all =
      page.lay(told(sheet, words, charts::worst_misreading(scales.ruler()).share), sheet.of);

  const double air_x = scales.fire.scale.at(scales.fire.scale.low()).x;
  page.title(frame.left, all.top + 6.5, 20, words("chart_fan_people"));
  page.title(air_x - 19, all.top + 6.5, 18.5, words("chart_fan_fire"));
  page.title(air_x + 19, all.top + 6.5, 18.5, words("chart_fan_breathe"));
  page.title(frame.right(), all.top + 6.5, 20, words("chart_fan_rate"));
  page.ruler(scales.ruler(), sheet.example_people, sheet.example_rate.in(litre / hour));
  page.scale(scales.people.scale, ChartPage::On::left);
  page.scale(scales.fire.scale, ChartPage::On::left);
  page.scale(scales.breathe.scale, ChartPage::On::right, false);
  page.scale(scales.rate.scale, ChartPage::On::right);
  if (chart.fan) {
    const double fan = charts::in_cubic_metres_a_minute.figure(*chart.fan);
    if (fan > scales.fire.scale.low() && fan < scales.fire.scale.high())
      page.wall(air_x - 4, air_x + 4, scales.fire.scale.at(fan).y, true, air_x - 19, Side::right, 42,
                words("chart_fan_yours", {with_unit(down_to(fan, 0.1), "m³/min")}));
  }
  // Beside the figures against fire, over or under the ruler.
  const VolumeFlow fire = against_fire(sheet);
  const bool rises = scales.rate.at(sheet.example_rate).y < scales.people.at(sheet.example_people).y;
  page.answer(air_x - 17, scales.fire.at(fire).y + (rises ? -1 : 8),
              figure_text(two_figures_up(fire.in(cubic_metre_per_minute))), "m³/min", Side::right);
  return std::move(page).done();
}

}  // namespace dampward::papers
