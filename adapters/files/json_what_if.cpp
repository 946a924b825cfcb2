#include "adapters/files/detail/json_what_if.h"

#include <algorithm>

namespace dampward::files::detail {
namespace {

using namespace workbench;

double celsius(Temperature t) {
  return rounded(t.celsius(), 1);
}
double minutes(Duration time) {
  return rounded(time.in(minute), 1);
}
double hours(Duration time) {
  return rounded(time.in(hour), 2);
}
double flow(VolumeFlow air) {
  return rounded(air.in(cubic_metre_per_minute), 1);
}

// Both figures under one key each, and why one is not known.
void put_unknown(Json& json, const std::string& before, const std::string& after, const Json& first,
                 const Json& second, const char* reason) {
  json[before] = first;
  if (first.is_null()) json[before + "_reason"] = reason;
  json[after] = second;
  if (second.is_null()) json[after + "_reason"] = reason;
}

Json changes_json(const PlanDifference& difference) {
  Json list = Json::array();
  for (const ChangedValue& change : difference.changes) {
    Json json = {{"path", change.path}};
    put_unknown(json, "before", "after", change.before ? Json(*change.before) : Json(nullptr),
                Json(change.after), "no file gives it: what is usual, or what it is like, held");
    list.push_back(json);
  }
  return list;
}

Json units_json(const PlanDifference& difference, const WallClock& clock) {
  Json json = {{"gained", texts(difference.gained)}, {"lost", Json::array()}};
  for (const LostUnit& unit : difference.lost)
    json["lost"].push_back({{"unit", unit.unit.text}, {"rule", unit.rule}, {"reason", unit.reason}});
  json["newly_late"] = texts(difference.newly_late);
  json["no_longer_late"] = texts(difference.no_longer_late);
  const auto& finish = difference.finish;
  put_unknown(json, "finish_before_at", "finish_after_at",
              finish ? Json(iso_text(finish->before, clock)) : Json(nullptr),
              finish ? Json(iso_text(finish->after, clock)) : Json(nullptr),
              "one of the two plans treats nothing");
  json["finishes"] = Json::array();
  for (const MovedFinish& unit : difference.finishes) {
    json["finishes"].push_back(
        {{"unit", unit.unit.text},
         {"before_at", iso_text(unit.done.before, clock)},
         {"after_at", iso_text(unit.done.after, clock)},
         {"later_min",
          std::chrono::duration_cast<std::chrono::minutes>(unit.done.after - unit.done.before).count()}});
  }
  return json;
}

Json drying_json(const PlanDifference& difference) {
  Json heat = Json::array(), bakes = Json::array(), peaks = Json::array(), windows = Json::array();
  for (const MovedHeat& unit : difference.heat) {
    Json json = {{"unit", unit.unit.text}};
    const auto oven = [](const OvenId& id) { return id.empty() ? Json(nullptr) : Json(id.text); };
    put_unknown(json, "oven_before", "oven_after", oven(unit.oven.before), oven(unit.oven.after),
                "it is dried without heat");
    heat.push_back(json);
  }
  for (const MovedBake& unit : difference.bakes) {
    bakes.push_back({{"unit", unit.unit.text},
                     {"set_point_before_c", celsius(unit.set_point.before)},
                     {"set_point_after_c", celsius(unit.set_point.after)},
                     {"warm_up_before_min", minutes(unit.warm_up.before)},
                     {"warm_up_after_min", minutes(unit.warm_up.after)},
                     {"hold_before_h", hours(unit.hold.before)},
                     {"hold_after_h", hours(unit.hold.after)}});
  }
  for (const MovedPeak& part : difference.peaks) {
    peaks.push_back({{"unit", part.unit.text},
                     {"part", part.part.text},
                     {"name", part.name},
                     {"before_c", celsius(part.peak.before)},
                     {"after_c", celsius(part.peak.after)}});
  }
  for (const MovedWindow& unit : difference.windows) {
    windows.push_back({{"unit", unit.unit.text},
                       {"opens_before_min", minutes(unit.opens_after.before)},
                       {"opens_after_min", minutes(unit.opens_after.after)},
                       {"closes_before_min", minutes(unit.closes_after.before)},
                       {"closes_after_min", minutes(unit.closes_after.after)}});
  }
  return {{"heat", heat}, {"bakes", bakes}, {"peaks", peaks}, {"windows", windows}};
}

Json needs_json(const PlanDifference& difference) {
  Json list = Json::array();
  for (const MovedNeed& need : difference.needs) {
    list.push_back({{"item", need.item},
                    {"before_l", range_json(need.needed.before, litre, 2)},
                    {"after_l", range_json(need.needed.after, litre, 2)}});
  }
  return list;
}

Json rooms_json(const PlanDifference& difference) {
  Json list = Json::array();
  if (!difference.room) return list;
  const MovedRoom& room = *difference.room;
  Json json = {{"place", room.place}};
  const auto figure = [](const std::optional<double>& value, double scale, int digits) {
    return value ? Json(rounded(*value * scale, digits)) : Json(nullptr);
  };
  const auto known_flow = [](const std::optional<VolumeFlow>& air) {
    return air ? Json(flow(*air)) : Json(nullptr);
  };
  json.update({{"peak_lfl_before_pct", figure(room.worst_share.before, 100, 1)},
               {"peak_lfl_after_pct", figure(room.worst_share.after, 100, 1)},
               {"exposure_index_before", figure(room.exposure_index.before, 1, 2)},
               {"exposure_index_after", figure(room.exposure_index.after, 1, 2)},
               {"respirator_before", room.respirator.before},
               {"respirator_after", room.respirator.after},
               {"fan_before_m3_per_min", flow(room.fan.before)},
               {"fan_after_m3_per_min", flow(room.fan.after)},
               {"fan_fire_before_m3_per_min", flow(room.fan_fire.before)},
               {"fan_fire_after_m3_per_min", flow(room.fan_fire.after)},
               {"fan_people_before_m3_per_min", known_flow(room.fan_people.before)},
               {"fan_people_after_m3_per_min", known_flow(room.fan_people.after)}});
  const bool all_known =
      std::none_of(json.begin(), json.end(), [](const Json& value) { return value.is_null(); });
  if (!all_known)
    json["reason"] = "nothing is coated, nothing in the lacquer burns, or some solvent has no exposure limit";
  list.push_back(json);
  return list;
}

Json people_json(const PlanDifference& difference) {
  Json list = Json::array();
  for (const MovedWork& person : difference.work) {
    list.push_back({{"person", person.person.text},
                    {"hands_on_before_h", hours(person.hands_on.before)},
                    {"hands_on_after_h", hours(person.hands_on.after)}});
  }
  return list;
}

}  // namespace

Json what_if_json(const PlanDifference& difference, const WallClock& clock) {
  Json json = {{"changes", changes_json(difference)}};
  json.update(units_json(difference, clock));
  json.update(drying_json(difference));
  json.update({{"stock", needs_json(difference)},
               {"rooms", rooms_json(difference)},
               {"people", people_json(difference)},
               {"words", difference.words}});
  return json;
}

}  // namespace dampward::files::detail
