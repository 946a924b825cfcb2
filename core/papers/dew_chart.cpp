#include <algorithm>
#include <cmath>

#include "core/moist_air/humid_air.h"
#include "core/papers/detail/chart_page.h"

namespace dampward::papers {
namespace {

// A well-aired wet thermometer reads the thermodynamic wet bulb within this (moist_air/humid_air.h).
constexpr TemperatureStep bulb_error = 0.3 * kelvin;
// Weather moves the pressure by about this share (moist_air/atmosphere.h).
constexpr double weather_pressure = 0.03;
// Air past the thermometers of an aspirated psychrometer, m/s. Source: WMO-No. 8 ch. 4, 2.5 to 10 m/s (from memory), rounded up.
constexpr double past_the_sock = 3;

// How far the dew point is off where the wet thermometer and the pressure are.
double model_spread(const DewChartSheet& sheet) {
  const Temperature exact = charts::dew_point_of(sheet.chart, sheet.example_air, sheet.example_wet);
  double worst = 0;
  for (const double pressure : {1 - weather_pressure, 1 + weather_pressure}) {
    charts::DewChart chart = sheet.chart;
    chart.pressure = pressure * chart.pressure;
    for (const double bulb : {-1.0, 1.0}) {
      const Temperature read =
          charts::dew_point_of(chart, sheet.example_air, sheet.example_wet + bulb * bulb_error);
      worst = std::max(worst, std::abs((read - exact).in(kelvin)));
    }
  }
  return worst;
}

ChartWords told(const DewChartSheet& sheet, const Words& words, double misread) {
  const charts::DewChart& chart = sheet.chart;
  const std::string hottest = with_unit(down_to(chart.rules.hottest.celsius(), 0.1), "°C");
  const Temperature dew = charts::dew_point_of(chart, sheet.example_air, sheet.example_wet);
  ChartWords told;
  told.name = words("chart_dew");
  told.how = words("chart_dew_how");
  told.example =
      words("chart_dew_example",
            {with_unit(sheet.example_air.celsius(), "°C"), with_unit(sheet.example_wet.celsius(), "°C"),
             with_unit(up_to(dew.celsius(), 0.1), "°C"),
             with_unit(up_to((dew + chart.rules.dew_margin).celsius(), 0.1), "°C")});
  told.zones = {{{words("chart_do_not_coat"), words("chart_under")},
                 {words("chart_coat"), words("chart_between")},
                 {words("chart_wait"), words("chart_over", {hottest})}}};
  told.notes = {words("chart_dew_sock",
                      {with_unit(past_the_sock, "m/s"), with_unit(charts::coldest_bulb.celsius(), "°C")}),
                words("chart_dew_pressure", {with_unit(std::round(chart.pressure.in(hectopascal)), "hPa"),
                                             with_unit(chart.rules.dew_margin.in(kelvin), "K")})};
  told.error =
      words("chart_dew_error", {with_unit(up_to(misread, 0.1), "K"), with_unit(bulb_error.in(kelvin), "K"),
                                with_unit(up_to(model_spread(sheet), 0.1), "K")});
  return told;
}

charts::Frame frame_in(const charts::Frame& all) {
  return {36, all.top + 25, 124, all.height - 29};
}

}  // namespace

Result<Page> dew_chart(const DewChartSheet& sheet, const Paper& paper, const Words& words,
                       const Measure& measure) {
  const charts::DewChart& chart = sheet.chart;
  const auto below_air = [](double air, double wet) { return wet <= air; };
  // The words say how near it reads, and that hangs on the room they leave: once for the room, once to print.
  charts::Frame frame;
  {
    ChartPage trial(paper, words, measure);
    frame = frame_in(trial.lay(told(sheet, words, 0.5), sheet.of));
  }
  if (frame.height < 60) frame.height = 60;
  const double misread = charts::worst_misreading(charts::placed(chart, frame).ruler(), below_air).most;
  ChartPage page(paper, words, measure);
  const charts::Frame all = page.lay(told(sheet, words, misread), sheet.of);
  const charts::DewScales scales = charts::placed(chart, frame);

  const double dew_x = frame.right(), wet_x = scales.wet.scale.at(scales.wet.scale.high()).x;
  page.title(frame.left, all.top + 6.5, 18, words("chart_dew_dry"));
  page.title(wet_x - 6, all.top + 6.5, 15, words("chart_dew_wet"));
  page.title(dew_x - 10, all.top + 6.5, 11, words("chart_dew_point"));
  page.title(dew_x + 18, all.top + 6.5, 16, words("chart_window_surface"));
  page.ruler(scales.ruler(), sheet.example_air.celsius(), sheet.example_wet.celsius());
  page.scale(scales.air.scale, ChartPage::On::left);
  page.scale(scales.wet.scale, ChartPage::On::left);
  page.scale(scales.dew.scale, ChartPage::On::left);
  // The same line by the coldest surface: dew point plus margin.
  const double margin = chart.rules.dew_margin.in(kelvin);
  const charts::Scale& dew = scales.dew.scale;
  const charts::Scale surface(dew.low() + margin,
                              std::min(dew.high() + margin, chart.rules.hottest.celsius()),
                              [&dew, margin](double t) { return dew.at(t - margin); });
  page.scale(surface, ChartPage::On::right, false);
  if (surface.high() > chart.rules.hottest.celsius() - 0.01)
    page.wall(dew_x - 4, dew_x + 4, dew.at(dew.high()).y, true, 0, Side::left, 0, "");

  const Temperature answer = charts::dew_point_of(chart, sheet.example_air, sheet.example_wet);
  page.answer(dew_x + 16, scales.dew.at(answer).y + 2.2, figure_text(up_to(answer.celsius(), 0.1)), "°C",
              Side::left);
  return std::move(page).done();
}

}  // namespace dampward::papers
