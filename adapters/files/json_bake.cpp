#include "adapters/files/detail/json_answers.h"
#include "adapters/files/json_documents.h"
#include "workbench/bake_answer.h"

namespace dampward::files {
namespace {

using detail::put_or_why;

double hours(Duration time) {
  return rounded(time.in(hour), 2);
}

Json oven_json(const workbench::OvenBake& oven) {
  Json parts = Json::array();
  for (const auto& part : oven.parts) parts.push_back(detail::part_json(part));
  // Of an oven that does not bake the load there are no figures.
  const auto figure = [&](double value) { return oven.bakes ? Json(value) : Json(nullptr); };
  Json json = {{"oven", oven.oven.text},
               {"name", oven.name},
               {"bakes", oven.bakes},
               {"in_time", oven.in_time()},
               {"reason", oven.reason},
               {"settle", oven.settle},
               {"set_point_c", figure(rounded(oven.set_point.celsius(), 1))},
               {"warm_up_min", figure(rounded(oven.warm_up.in(minute), 1))},
               {"hold_h", figure(hours(oven.hold))},
               {"hold_nominal_h", figure(hours(oven.hold_nominal))}};
  put_or_why(json, "rule_h", oven.rule ? Json(hours(*oven.rule)) : Json(nullptr),
             "the trade's linear rule is not carried below 49 °C or above 71 °C");
  json["in_oven_h"] = figure(hours(oven.in_oven()));
  put_or_why(json, "watched_h", oven.watched ? Json(hours(*oven.watched)) : Json(nullptr), "no crew to ask");
  json["weakest_part"] = oven.weakest;
  json["slowest_part"] = oven.slowest;
  json["excess_c"] = figure(rounded(oven.excess.in(kelvin), 1));
  json["dampest_pct"] = figure(rounded(oven.dampest.percent(), 1));
  json["at_end_pct"] = figure(rounded(oven.at_end.percent(), 1));
  json["water_kg"] = figure(rounded(oven.water.in(kilogram), 3));
  json["energy_kwh"] = figure(rounded(oven.energy.in(kilowatt * hour), 2));
  json["parts"] = parts;
  json["warnings"] = oven.warnings;
  return json;
}

}  // namespace

std::string bake_json(const workbench::BakeAnswer& answer) {
  Json ovens = Json::array(), load = Json::array();
  for (const auto& line : answer.load) load.push_back({{"kind", line.kind_name}, {"count", line.count}});
  for (const auto& oven : answer.ovens) ovens.push_back(oven_json(oven));
  const Json json = {{"verb", "bake"},
                     {"basis", answer.basis},
                     {"air",
                      {{"temperature_c", rounded(answer.air.temperature.celsius(), 1)},
                       {"humidity_pct", rounded(answer.air.humidity.percent(), 1)}}},
                     {"load", load},
                     {"ovens", ovens},
                     {"left_out", detail::left_out_json(answer.left_out)},
                     {"cautions", detail::cautions_json(answer.cautions)},
                     {"faults", Json::array()}};
  return document(json);
}

}  // namespace dampward::files
