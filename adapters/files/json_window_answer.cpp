#include "adapters/files/detail/json_answers.h"
#include "adapters/files/detail/json_window.h"
#include "adapters/files/json_documents.h"
#include "workbench/window_answer.h"

namespace dampward::files {
namespace {

using detail::put_or_why;

Json minutes(const std::optional<Duration>& time) {
  return time ? Json(rounded(time->in(minute), 1)) : Json(nullptr);
}

Json unit_json(const workbench::UnitWindow& window) {
  const std::string none = window.reason.empty() ? "the margin never runs out in this air" : window.reason;
  Json json = {{"what", window.what}, {"usable", window.usable}};
  put_or_why(json, "opens_after_min", minutes(window.opens), none);
  json["opened_by"] = window.opened_by;
  put_or_why(json, "closes_after_min", minutes(window.closes), none);
  json["closed_by"] = window.closed_by;
  put_or_why(json, "latest_start_min", minutes(window.latest_start), none);
  put_or_why(json, "trade_opens_after_min", minutes(window.trade_opens), none);
  json["coats"] = window.coats;
  put_or_why(json, "work_min", minutes(window.work), none);
  json["damp_back"] = detail::damp_back_json(window.damp_back);
  json["step_down"] = detail::step_down_json(window.held);
  json["reason"] = window.reason;
  json["settle"] = window.settle;
  put_or_why(json, "dry_enough_pct",
             window.dry_enough ? Json(rounded(window.dry_enough->percent(), 0)) : Json(nullptr),
             window.usable ? "the air is dry enough" : "see the remedies");
  json["remedies"] = detail::remedies_json(window.remedies);
  return json;
}

}  // namespace

std::string window_json(const workbench::WindowAnswer& answer) {
  Json windows = Json::array();
  for (const auto& window : answer.windows) windows.push_back(unit_json(window));
  const Json json = {{"verb", "window"},
                     {"basis", answer.basis},
                     {"lacquer", answer.lacquer},
                     {"air",
                      {{"temperature_c", rounded(answer.air.temperature.celsius(), 1)},
                       {"humidity_pct", rounded(answer.air.humidity.percent(), 1)},
                       {"dew_point_c", rounded(answer.dew_point.celsius(), 1)}}},
                     {"floor_c", rounded(answer.floor.celsius(), 1)},
                     {"hottest_c", rounded(answer.hottest.celsius(), 1)},
                     {"hottest_assumed", answer.hottest_assumed},
                     {"windows", windows},
                     {"warnings", answer.warnings},
                     {"cautions", detail::cautions_json(answer.cautions)},
                     {"faults", Json::array()}};
  return document(json);
}

}  // namespace dampward::files
