#include "adapters/files/detail/json_answers.h"
#include "adapters/files/json_documents.h"
#include "workbench/charts.h"

namespace dampward::files {
namespace {

double celsius(Temperature t) {
  return rounded(t.celsius(), 1);
}
double steps(TemperatureStep step) {
  return rounded(step.in(kelvin), 2);
}
double air(VolumeFlow flow) {
  return rounded_up(flow.in(cubic_metre_per_minute), 1);
}

Json bake_chart(const papers::BakeChartSheet& sheet) {
  const charts::BakeChart& chart = sheet.chart;
  const auto hold = [&](drying::Side side) {
    return rounded_up(charts::hold_of(chart, sheet.example_set, sheet.example_thickness, side).in(hour), 2);
  };
  Json json;
  detail::put_or_why(json, "oven", chart.oven.empty() ? Json(nullptr) : Json(chart.oven),
                     "no shop folder tells of ovens");
  json.update({{"set_low_c", celsius(chart.set_low)},
               {"set_high_c", celsius(chart.set_high)},
               {"hotter_k", steps(chart.excess)},
               {"colder_k", steps(chart.evenness)},
               {"margin_k", steps(chart.margin)},
               {"thinnest_mm", rounded(chart.thinnest.in(millimetre), 2)},
               {"thickest_mm", rounded(chart.thickest.in(millimetre), 2)},
               {"example",
                {{"set_c", celsius(sheet.example_set)},
                 {"thickness_mm", rounded(sheet.example_thickness.in(millimetre), 2)},
                 {"hold_h", hold(drying::Side::safe)},
                 {"hold_usual_h", hold(drying::Side::typical)}}}});
  return json;
}

Json window_chart(const papers::WindowChartSheet& sheet) {
  const charts::WindowChart& chart = sheet.chart;
  Json slower = Json::array();
  for (const auto& other : sheet.slower) slower.push_back({{"kind", other.kind}, {"times", other.times}});
  const Temperature floor = charts::floor_of(chart, sheet.example_air, sheet.example_humidity);
  const auto time = charts::time_down_to(chart, floor, sheet.example_air);
  Json example = {{"air_c", celsius(sheet.example_air)},
                  {"humidity_pct", rounded(sheet.example_humidity.percent(), 0)},
                  {"coldest_surface_c", rounded_up(floor.celsius(), 1)}};
  detail::put_or_why(example, "warm_min",
                     time ? Json(rounded(std::floor(time->in(minute)), 0)) : Json(nullptr),
                     "in this air no surface cools so far");
  return {{"air_low_c", celsius(chart.air_low)},
          {"air_high_c", celsius(chart.air_high)},
          {"humidity_low_pct", rounded(chart.humidity_low.percent(), 0)},
          {"hottest_surface_c", celsius(chart.rules.hottest)},
          {"dew_margin_k", steps(chart.rules.dew_margin)},
          {"quickest", sheet.quickest},
          {"time_constant_min", rounded(chart.cooling.in(minute), 1)},
          {"slower", slower},
          {"coats", sheet.coats},
          {"flashes_min", rounded(sheet.flashes.in(minute), 0)},
          {"example", example}};
}

Json litres_chart(const papers::LitresChartSheet& sheet) {
  Json sets = Json::array(), tools = Json::array();
  for (const auto& set : sheet.chart.sets)
    sets.push_back({{"name", set.name}, {"area_m2", range_json(set.area, square_metre, 3)}});
  for (const auto& tool : sheet.chart.tools)
    tools.push_back(
        {{"name", tool.name}, {"mix_l_per_m2", range_json(tool.on_the_surface, litre / square_metre, 3)}});
  const auto& tool = sheet.chart.tools[sheet.example_tool];
  return {{"coats", sheet.coats},
          {"film_um", range_json(sheet.film, micrometre, 0)},
          {"sets", sets},
          {"tools", tools},
          {"example",
           {{"area_m2", rounded(sheet.example_area.in(square_metre), 3)},
            {"tool", tool.name},
            {"mix_l", rounded_up((sheet.example_area * tool.on_the_surface.typical).in(litre), 3)},
            {"mix_at_worst_l", rounded_up((sheet.example_area * tool.on_the_surface.high).in(litre), 3)}}}};
}

Json fan_chart(const papers::FanChartSheet& sheet) {
  const charts::FanChart& chart = sheet.chart;
  const VolumeFlow used = sheet.example_people * sheet.example_rate;
  Json example = {{"people", rounded(sheet.example_people, 0)},
                  {"rate_l_per_h", rounded(sheet.example_rate.in(litre / hour), 2)},
                  {"fire_m3_per_min", air(chart.fire * used)},
                  {"breathe_m3_per_min", air(chart.breathe * used)}};
  Json json = {{"limit_share_pct", rounded(100 * sheet.fire_share, 0)},
               {"mixing", rounded(sheet.mixing, 2)},
               {"air_c", celsius(sheet.warm)}};
  detail::put_or_why(json, "fan_m3_per_min",
                     chart.fan ? Json(rounded(chart.fan->in(cubic_metre_per_minute), 1)) : Json(nullptr),
                     "no shop folder tells of a fan");
  json["example"] = example;
  return json;
}

Json dew_chart(const papers::DewChartSheet& sheet) {
  const charts::DewChart& chart = sheet.chart;
  const Temperature dew = charts::dew_point_of(chart, sheet.example_air, sheet.example_wet);
  return {{"air_low_c", celsius(chart.air_low)},
          {"air_high_c", celsius(chart.air_high)},
          {"dew_low_c", celsius(chart.dew_low)},
          {"dew_high_c", celsius(chart.dew_high)},
          {"pressure_hpa", rounded(chart.pressure.in(hectopascal), 0)},
          {"example",
           {{"dry_c", celsius(sheet.example_air)},
            {"wet_c", celsius(sheet.example_wet)},
            {"dew_point_c", rounded_up(dew.celsius(), 1)}}}};
}

template <class Sheet, class Told>
Json or_null(const std::optional<Sheet>& sheet, const Told& told) {
  return sheet ? told(*sheet) : Json(nullptr);
}

}  // namespace

std::string charts_json(const workbench::WallCharts& charts) {
  Json json = {{"verb", "charts"}};
  detail::put_or_why(json, "shop", charts.shop.empty() ? Json(nullptr) : Json(charts.shop),
                     "no shop folder was named");
  json.update({{"lacquer", charts.lacquer},
               {"station", charts.station},
               {"weather", charts.weather},
               {"covered_pct", rounded(std::floor(100 * charts.covered), 0)}});
  json["bake"] = Json::array();
  for (const papers::BakeChartSheet& sheet : charts.bakes) json["bake"].push_back(bake_chart(sheet));
  const std::string why = "see left_out";
  json["window"] = window_chart(charts.window);
  detail::put_or_why(json, "litres", or_null(charts.litres, litres_chart), why);
  detail::put_or_why(json, "fan", or_null(charts.fan, fan_chart), why);
  json["dew"] = dew_chart(charts.dew);
  json["left_out"] = Json::array();
  for (const auto& left : charts.left_out)
    json["left_out"].push_back({{"chart", left.chart}, {"reason", left.reason}, {"settle", left.settle}});
  json["faults"] = Json::array();
  return document(json);
}

}  // namespace dampward::files
