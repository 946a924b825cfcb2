#include "apps/cli/charts_summary.h"

#include <cmath>

#include "apps/cli/answer_page.h"

namespace dampward::cli {
namespace {

std::string degrees(Temperature t) {
  return fixed(t.celsius(), 1) + " °C";
}
std::string whole(Temperature t) {
  return fixed(t.celsius(), 0);
}

}  // namespace

std::vector<std::string> charts_summary(const workbench::WallCharts& charts, const std::string& place) {
  AnswerPage page;
  page.say("WALL CHARTS for " + charts.lacquer);
  page.say(format("Air of {} ({}): {} % of its hours lie on them.", charts.station, charts.weather,
                  fixed(std::floor(100 * charts.covered), 0)));
  for (const papers::BakeChartSheet& sheet : charts.bakes) {
    const charts::BakeChart& c = sheet.chart;
    page.say(format(
        " - oven{}: set {} to {} °C, parts {} to {} mm. At {} °C and {} mm hold {} h.",
        c.oven.empty() ? "" : " \"" + c.oven + "\"", whole(c.set_low), whole(c.set_high),
        fixed(c.thinnest.in(millimetre), 1), fixed(c.thickest.in(millimetre), 0), whole(sheet.example_set),
        fixed(sheet.example_thickness.in(millimetre), 0),
        fixed(std::ceil(10 * charts::hold_of(c, sheet.example_set, sheet.example_thickness).in(hour)) / 10,
              1)));
  }
  {
    const charts::WindowChart& c = charts.window.chart;
    const Temperature floor = charts::floor_of(c, charts.window.example_air, charts.window.example_humidity);
    page.say(format(" - window: air {} to {} °C. At {} °C and {} % no surface under {} or over {}.",
                    whole(c.air_low), whole(c.air_high), whole(charts.window.example_air),
                    fixed(charts.window.example_humidity.percent(), 0),
                    degrees(Temperature::celsius(std::ceil(10 * floor.celsius() - 1e-6) / 10)),
                    degrees(c.rules.hottest)));
  }
  if (charts.litres) {
    const papers::LitresChartSheet& sheet = *charts.litres;
    const charts::LitresChart::Tool& tool = sheet.chart.tools[sheet.example_tool];
    page.say(format(" - litres: {} m² with {} takes {} L of mix, {} L at worst.",
                    fixed(sheet.example_area.in(square_metre), 1), tool.name,
                    fixed((sheet.example_area * tool.on_the_surface.typical).in(litre), 2),
                    fixed((sheet.example_area * tool.on_the_surface.high).in(litre), 2)));
  }
  if (charts.fan) {
    const papers::FanChartSheet& sheet = *charts.fan;
    const auto air = [&](double need) {
      return fixed(std::ceil((sheet.example_people * need * sheet.example_rate).in(cubic_metre_per_minute)),
                   0);
    };
    page.say(format(" - fan: {} at {} L of mix an hour asks {} m³/min against fire, {} to breathe.",
                    fixed(sheet.example_people, 0), fixed(sheet.example_rate.in(litre / hour), 1),
                    air(sheet.chart.fire), air(sheet.chart.breathe)));
  }
  {
    const papers::DewChartSheet& sheet = charts.dew;
    page.say(format(" - dew: dry {} and wet {} mean a dew point of {}.", degrees(sheet.example_air),
                    degrees(sheet.example_wet),
                    degrees(charts::dew_point_of(sheet.chart, sheet.example_air, sheet.example_wet))));
  }
  for (const workbench::WallCharts::LeftOut& left : charts.left_out)
    page.say(format(" no {} chart: {}. {}", left.chart, left.reason, left.settle));
  page.say(place.empty() ? "Print them with --out PLACE." : "Written into " + place + ".");
  page.say("Charts plan and permit nothing: local codes and a licensed person decide.");
  return std::move(page).lines();
}

}  // namespace dampward::cli
