#include <cmath>

#include "adapters/files/detail/json_answers.h"
#include "adapters/files/detail/json_mixing.h"
#include "adapters/files/detail/json_rework.h"
#include "adapters/files/detail/json_what_if.h"
#include "adapters/files/detail/json_window.h"
#include "adapters/files/json_documents.h"
#include "adapters/files/json_values.h"
#include "core/line/calendar.h"
#include "workbench/plan.h"

namespace dampward::files {
namespace {

using workbench::Plan;

double hours(Duration time) {
  return rounded(time.in(hour), 2);
}
double minutes(Duration time) {
  return rounded(time.in(minute), 1);
}
double celsius(Temperature t) {
  return rounded(t.celsius(), 1);
}

Json costs_json(const workbench::Load& load) {
  Json all = Json::array();
  for (const workbench::UnitsCost& cost : load.costs) {
    all.push_back({{"units", texts(cost.units)},
                   {"set_point_without_c", celsius(cost.set_without)},
                   {"costs_h", hours(cost.costs)},
                   {"weakest", cost.weakest}});
  }
  return all;
}

Json split_json(const workbench::Load& load) {
  Json all = Json::array();
  for (const workbench::SplitOff& part : load.split) {
    all.push_back({{"units", texts(part.units)},
                   {"set_point_c", celsius(part.set_point)},
                   {"hold_h", hours(part.hold)},
                   {"in_oven_h", hours(part.in_oven)}});
  }
  return all;
}

Json load_json(const workbench::Load& load, const Plan& plan) {
  Json parts = Json::array();
  for (const workbench::PartInOven& part : load.parts) parts.push_back(detail::part_json(part));
  Json json = {{"id", load.id},
               {"oven", load.oven.text},
               {"units", texts(load.units)},
               {"set_point_c", celsius(load.set_point)},
               {"warm_up_min", minutes(load.warm_up)},
               {"hold_h", hours(load.hold)},
               {"hold_nominal_h", hours(load.hold_nominal)},
               {"rule_h", load.rule ? Json(hours(*load.rule)) : Json(nullptr)}};
  if (!load.rule) json["rule_h_reason"] = "the trade's linear rule is not carried below 49 °C or above 71 °C";
  json["wet_lfl_pct"] = load.wet_share ? Json(rounded(*load.wet_share * 100, 0)) : Json(nullptr);
  if (!load.wet_share) json["wet_lfl_pct_reason"] = "nothing in the lacquer burns";
  json.update({{"weakest_unit", load.weakest_unit.text},
               {"weakest_part", load.weakest_part.text},
               {"costs", costs_json(load)},
               {"split", split_json(load)},
               {"recipe", load.recipe},
               {"step_down", detail::step_down_json(load.step_down)},
               {"starts_at", iso_text(load.starts, plan.clock)},
               {"first_out_at", iso_text(load.first_out, plan.clock)},
               {"last_out_at", iso_text(load.last_out, plan.clock)},
               {"parts", parts}});
  return json;
}

Json step_json(const workbench::UnitStep& step, const Plan& plan) {
  return {{"id", step.id},
          {"title", step.title},
          {"reason", step.reason},
          {"skill", step.skill},
          {"attendance", step.attendance},
          {"length_min", range_json(step.length, minute, 0)},
          {"starts_at", iso_text(step.starts, plan.clock)},
          {"ends_at", iso_text(step.ends, plan.clock)},
          {"people", texts(step.people)},
          {"station", step.station}};
}

Json unit_json(const workbench::UnitPlan& unit, const Plan& plan) {
  Json steps = Json::array();
  for (const auto& step : unit.steps) steps.push_back(step_json(step, plan));
  Json json = {{"unit", unit.unit.text},
               {"kind", unit.kind.text},
               {"way", unit.way},
               {"way_reason", unit.way_reason},
               {"no_heat", unit.no_heat},
               {"no_heat_reason", unit.no_heat_reason},
               {"load", unit.load.empty() ? Json(nullptr) : Json(unit.load)}};
  if (unit.load.empty()) json["reason"] = unit.no_heat_reason;
  json["measure"] = unit.measure;
  json["measure_saves_h"] = unit.saves ? Json(hours(*unit.saves)) : Json(nullptr);
  if (!unit.saves) json["measure_saves_h_reason"] = "no measurement would raise its limit";
  json.update({{"out_before_heat", route::lines_of(unit.lists.removed)},
               {"mask", route::lines_of(unit.lists.mask)},
               {"tighten", route::lines_of(unit.lists.tighten)},
               {"loosen", route::lines_of(unit.lists.loosen)},
               {"touch_up", route::lines_of(unit.lists.touch_up)},
               {"coats", unit.coats},
               {"lacquer_l", range_json(unit.lacquer, litre, 3)},
               {"thinner_l", range_json(unit.thinner, litre, 3)},
               {"done_at", iso_text(unit.done, plan.clock)},
               {"due_at", unit.due ? Json(iso_text(*unit.due, plan.clock)) : Json(nullptr)},
               {"notes", unit.notes},
               {"steps", steps}});
  if (!unit.due) json["due_at_reason"] = "the queue gives no due date";
  return json;
}

Json late_json(const Plan& plan) {
  Json late = Json::array();
  for (const auto& unit : plan.units) {
    if (!unit.due || unit.done <= *unit.due) continue;
    late.push_back(
        {{"unit", unit.unit.text},
         {"due_at", iso_text(*unit.due, plan.clock)},
         {"done_at", iso_text(unit.done, plan.clock)},
         {"late_h",
          rounded(std::chrono::duration<double, std::ratio<3600>>(unit.done - *unit.due).count(), 1)}});
  }
  return late;
}

Json pct_or_null(const std::optional<double>& share) {
  return share ? Json(rounded_up(*share * 100, 2)) : Json(nullptr);
}

Json time_or_null(const std::optional<Instant>& time, const Plan& plan) {
  return time ? Json(iso_text(*time, plan.clock)) : Json(nullptr);
}

// Minutes from the start of the work, and the share then.
Json curve_json(const workbench::RoomAir& room, const Plan& plan) {
  Json curve = Json::array();
  for (const auto& point : room.curve) {
    curve.push_back({std::chrono::duration_cast<std::chrono::minutes>(point.at - plan.from).count(),
                     rounded_up(point.share * 100, 2)});
  }
  return curve;
}

Json room_json(const workbench::RoomAir& room, const Plan& plan) {
  Json json = {
      {"place", room.place},
      {"lower_limit_pct", room.lower_limit ? Json(rounded(room.lower_limit->percent(), 3)) : Json(nullptr)}};
  if (!room.lower_limit) json["reason"] = "nothing in the lacquer burns";
  json.update(
      {{"allowed_lfl_pct", rounded(room.limit_share * 100, 1)},
       {"peak_lfl_pct", pct_or_null(room.worst_share)},
       {"peak_at", time_or_null(room.worst_at, plan)},
       {"near_peak_lfl_pct", pct_or_null(room.near_share)},
       {"curve", curve_json(room, plan)},
       {"purge_min", room.purge ? Json(std::ceil(room.purge->in(minute))) : Json(nullptr)},
       {"fan_m3_per_min", rounded(room.fan.in(cubic_metre_per_minute), 1)},
       {"fan_fire_m3_per_min", rounded_up(room.fan_fire.in(cubic_metre_per_minute), 1)},
       {"fan_people_m3_per_min",
        room.fan_people ? Json(rounded_up(room.fan_people->in(cubic_metre_per_minute), 1)) : Json(nullptr)},
       {"exposure_index", room.exposure_index ? Json(rounded_up(*room.exposure_index, 2)) : Json(nullptr)},
       {"respirator", room.respirator},
       {"because", room.because}});
  if (!room.worst_share) {
    for (const char* key : {"peak_lfl_pct_reason", "peak_at_reason", "near_peak_lfl_pct_reason"})
      json[key] = "nothing is coated, or nothing in the lacquer burns";
  }
  if (!room.purge) json["purge_min_reason"] = "no fresh air comes in, or nothing in the lacquer burns";
  if (!room.exposure_index)
    json["exposure_index_reason"] =
        "nothing is coated, some solvent has no exposure limit, or the day leaves no rest";
  if (!room.fan_people) json["reason"] = "some solvent has no exposure limit: no air is known to be enough";
  return json;
}

Json refusal_json(const workbench::Refusal& refusal, const Plan& plan) {
  Json ladder = Json::array();
  for (const workbench::Rung& rung : refusal.ladder) {
    ladder.push_back({{"change", rung.change},
                      {"words", rung.words},
                      {"cost", rounded(rung.cost, 2)},
                      {"cost_unit", plan.cost_unit},
                      {"cost_estimated", rung.estimated},
                      {"tried_with", rung.with_whole_queue ? "the whole queue" : "this unit alone"},
                      {"done_at", iso_text(rung.done, plan.clock)},
                      {"loses", texts(rung.loses)}});
  }
  Json json = {{"unit", refusal.unit.text},
               {"kind", refusal.kind.text},
               {"rule", word(refusal.rule)},
               {"reason", refusal.reason},
               {"settle", refusal.settle},
               {"ladder", ladder},
               {"remedies", detail::remedies_json(refusal.remedies)}};
  if (refusal.ladder.empty()) json["ladder_reason"] = refusal.ladder_reason;
  return json;
}

Json power_json(const std::optional<workbench::PowerUse>& power, const Plan& plan) {
  if (!power) return nullptr;
  Json json = {{"gives_w", rounded(power->gives.in(watt), 0)},
               {"always_on_w", rounded(power->always_on.in(watt), 0)},
               {"peak_w", rounded(power->peak.in(watt), 0)},
               {"peak_at", time_or_null(power->peak_at, plan)}};
  if (!power->peak_at) json["peak_at_reason"] = "nothing is switched on";
  return json;
}

Json person_json(const workbench::PersonAir& person, const Plan& plan) {
  const auto index = [](const std::optional<double>& value) {
    return value ? Json(rounded_up(*value, 2)) : Json(nullptr);
  };
  Json json = {
      {"person", person.person.text},
      {"day_at", time_or_null(person.day, plan)},
      {"exposure_index", index(person.exposure_index)},
      {"exposure_index_far", index(person.exposure_far)},
      {"stel_index", index(person.stel_index)},
      {"stel_at", time_or_null(person.stel_at, plan)},
      {"peak_ppm", std::ceil(person.peak.ppm())},
      {"peak_at", time_or_null(person.peak_at, plan)},
      {"danger_share", rounded_up(person.danger, 2)},
      {"limit_factor", rounded(person.limit_factor, 3)},
      {"respirator", person.respirator},
      {"respirator_factor", person.respirator_factor ? Json(*person.respirator_factor) : Json(nullptr)},
      {"supplied_air", person.supplied_air},
      {"highest_use_ppm", person.highest_use ? Json(std::floor(person.highest_use->ppm())) : Json(nullptr)},
      {"because", person.because},
      {"remedies", person.remedies}};
  if (!person.exposure_index)
    json["reason"] = "some solvent breathed has no exposure limit, or the day leaves no rest";
  if (!person.day)
    json["day_at_reason"] = json["peak_at_reason"] = json["stel_at_reason"] = "no vapour comes near";
  if (!person.respirator_factor) json["respirator_factor_reason"] = "none is needed against vapour";
  if (!person.highest_use)
    json["highest_use_ppm_reason"] = person.respirator_factor
                                         ? "some limit or figure dangerous to life is not known"
                                         : "none is needed against vapour";
  return json;
}

Json objective_json(const line::Objective& objective, const Plan& plan) {
  return {{"weighted_lateness_min", objective.lateness},
          {"finish_at", iso_text(line::instant_of(objective.finish, plan.from), plan.clock)},
          {"ovens_h", rounded(static_cast<double>(objective.ovens) / 60, 2)}};
}

}  // namespace

std::string plan_json(const Plan& plan, const Problems& suspicions,
                      const workbench::PlanDifference* what_if) {
  Json loads = Json::array(), windows = Json::array(), refused = Json::array(), stock = Json::array(),
       treated = Json::array(), people = Json::array();
  for (const auto& load : plan.loads) loads.push_back(load_json(load, plan));
  for (const auto& window : plan.windows) windows.push_back(detail::window_json(window, plan.clock));
  for (const auto& refusal : plan.refused) {
    refused.push_back(refusal_json(refusal, plan));
  }
  for (const auto& need : plan.stock) {
    stock.push_back({{"item", need.item},
                     {"needed_l", range_json(need.needed, litre, 2)},
                     {"in_stock_l", rounded(need.in_stock.in(litre), 2)},
                     {"lots", texts(need.lots)},
                     {"expired", texts(need.expired)},
                     {"to_get_l", rounded(need.to_get.in(litre), 2)},
                     {"short", need.is_short}});
  }
  for (const auto& person : plan.people) people.push_back(person_json(person, plan));
  for (const auto& unit : plan.units) treated.push_back(unit_json(unit, plan));
  Json objective = objective_json(plan.objective, plan);
  objective["hand_overs"] = plan.objective.hand_overs;
  Json json = {{"verb", "plan"},
               {"shop", plan.shop},
               {"from", iso_text(plan.from, plan.clock)},
               {"units", plan.queued},
               {"treated", plan.units.size()},
               {"oven_loads", plan.loads.size()},
               {"refused", refused},
               {"late", late_json(plan)},
               {"objective", objective},
               {"at_best", objective_json(plan.at_best, plan)},

               {"air",
                {{"temperature_c", celsius(plan.air.temperature)},
                 {"humidity_pct", rounded(plan.air.humidity.percent(), 1)},
                 {"dew_point_c", celsius(plan.air.dew_point)},
                 {"warmest_c", celsius(plan.air.warmest)},
                 {"coolest_c", celsius(plan.air.coolest)},
                 {"because", plan.air.because}}},
               {"loads", loads},
               {"windows", windows},
               {"lacquer", plan.lacquer_name},
               {"stock", stock},
               {"mixing", detail::mixing_json(plan.mixing, plan.clock)},
               {"rooms", Json::array({room_json(plan.room, plan)})},
               {"power", power_json(plan.power, plan)},
               {"people", people},
               {"treatments", treated},
               {"warnings", plan.warnings},
               {"suspicions", problems_json(suspicions)},
               {"cautions", detail::cautions_json(plan.cautions)},
               {"violations", Json::array()},
               {"faults", Json::array()}};
  if (!plan.power) json["power_reason"] = "the shop's files set no limit";
  if (plan.at) {
    json["at"] = iso_text(*plan.at, plan.clock);
    json["moved"] = detail::moved_json(plan);
    json["rework"] = detail::rework_json(plan);
  }
  if (what_if != nullptr) json["what_if"] = detail::what_if_json(*what_if, plan.clock);
  return document(json);
}

}  // namespace dampward::files
