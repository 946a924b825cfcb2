#include "adapters/files/detail/timetable_words.h"
#include "adapters/files/json_values.h"
#include "adapters/files/timetable_json.h"

namespace dampward::files {
namespace {

using namespace line;

Json or_null(const std::string& text) {
  return text.empty() ? Json(nullptr) : Json(text);
}

template <class T>
Json or_null(const std::optional<T>& value) {
  return value ? Json(*value) : Json(nullptr);
}

Json or_null(const std::optional<Temperature>& value) {
  return value ? Json(rounded(value->celsius(), 3)) : Json(nullptr);
}

template <class Q>
Json or_null(const std::optional<Q>& value, Q unit) {
  return value ? Json(rounded(value->in(unit), 3)) : Json(nullptr);
}

Json spans_json(const Calendar& calendar) {
  Json list = Json::array();
  for (const Span& span : calendar) list.push_back({span.from, span.to});
  return list;
}

template <class Items, class Told>
Json listed_json(const Items& items, Told told) {
  Json list = Json::array();
  for (const auto& item : items) list.push_back(told(item));
  return list;
}

const char* word(Attendance attendance) {
  switch (attendance) {
    case Attendance::attended:
      return "attended";
    case Attendance::watched:
      return "watched";
    case Attendance::unattended:
      return "unattended";
  }
  return "";
}

const char* word(Obstacle obstacle) {
  switch (obstacle) {
    case Obstacle::gap:
      return "gap";
    case Obstacle::cycle:
      return "cycle";
    case Obstacle::skill:
      return "skill";
    case Obstacle::shift:
      return "shift";
    case Obstacle::watch:
      return "watch";
    case Obstacle::station:
      return "station";
    case Obstacle::capacity:
      return "capacity";
    case Obstacle::solvent:
      return "solvent";
    case Obstacle::horizon:
      return "horizon";
    case Obstacle::stopped:
      return "stopped";
  }
  return "";
}

Json operation_json(const Operation& op) {
  return {{"id", op.id},
          {"unit", or_null(op.unit)},
          {"length_min", op.length},
          {"attendance", word(op.attendance)},
          {"skill", or_null(op.skill)},
          {"people", op.people},
          {"pausable", op.pausable},
          {"station_skill", or_null(op.station_skill)},
          {"stations", op.stations},
          {"solvent", op.solvent},
          {"clears_min", op.clears},
          {"demands", listed_json(op.demands, [](const Demand& demand) {
             return Json{{"capacity", demand.capacity}, {"amount", demand.amount}, {"tail_min", demand.tail}};
           })}};
}

Json member_json(const Member& member) {
  return {{"loading", member.loading},
          {"unloading", member.unloading},
          {"needs_min", member.needs},
          {"volume_l", rounded(member.volume.in(litre), 3)},
          {"mass_kg", rounded(member.mass.in(kilogram), 3)},
          {"coldest_c", or_null(member.coldest)},
          {"hottest_c", or_null(member.hottest)}};
}

Json unit_json(const Unit& unit) {
  return {{"id", unit.id},
          {"due_min", or_null(unit.due)},
          {"priority", unit.priority},
          {"weight", unit.weight},
          {"after_due", unit.after_due}};
}

Json capacity_json(const Capacity& capacity) {
  return {{"id", capacity.id}, {"steps", listed_json(capacity.steps, [](const Capacity::Step& step) {
                                  return Json{step.from, step.amount};
                                })}};
}

}  // namespace

Json detail::late_json(const Lateness& late) {
  return {{"unit", late.unit}, {"due_min", late.due}, {"finish_min", late.finish}};
}

Json detail::unplaced_json(const Unplaced& unplaced) {
  return {{"unit", or_null(unplaced.unit)},
          {"operation", unplaced.operation},
          {"obstacle", word(unplaced.obstacle)},
          {"by", or_null(unplaced.by)},
          {"reason", unplaced.reason}};
}

std::string problem_text(const line::Problem& problem, const std::string& starts_at) {
  Json json = {{"format", "dampward timetable problem"},
               {"version", 1},
               {"starts_at", or_null(starts_at)},
               {"horizon_min", problem.horizon},
               {"now_min", problem.now}};
  json["units"] = listed_json(problem.units, unit_json);
  json["operations"] = listed_json(problem.operations, operation_json);
  json["gaps"] = listed_json(problem.gaps, [](const Gap& gap) {
    return Json{{"name", gap.name},
                {"from", gap.from},
                {"to", gap.to},
                {"shortest_min", gap.shortest},
                {"longest_min", or_null(gap.longest)}};
  });
  json["loads"] = listed_json(problem.loads, [](const Load& load) {
    return Json{{"id", load.id},
                {"ovens", load.ovens},
                {"bake", load.bake},
                {"setting_c", or_null(load.setting)},
                {"members", listed_json(load.members, member_json)}};
  });
  json["people"] = listed_json(problem.people, [](const Person& person) {
    return Json{{"id", person.id},
                {"skills", person.skills},
                {"shifts", spans_json(person.shifts)},
                {"breaks", spans_json(person.breaks)}};
  });
  json["stations"] = listed_json(problem.stations, [](const Station& station) {
    return Json{{"id", station.id}, {"places", station.places}, {"serves", station.serves}};
  });
  json["ovens"] = listed_json(problem.ovens, [](const Oven& oven) {
    return Json{{"id", oven.id},
                {"powered", spans_json(oven.powered)},
                {"near_solvent", oven.near_solvent},
                {"cools_min", oven.cools},
                {"volume_l", or_null(oven.volume, litre)},
                {"mass_kg", or_null(oven.mass, kilogram)}};
  });
  json["capacities"] = listed_json(problem.capacities, capacity_json);
  json["fixed"] = listed_json(problem.fixed, [](const Fixed& fixed) {
    return Json{{"operation", fixed.operation},
                {"start_min", fixed.start},
                {"end_min", fixed.end},
                {"people", fixed.people},
                {"station", or_null(fixed.station)}};
  });
  return document(json);
}

std::string answer_text(const line::Answer& answer) {
  Json json = {{"format", "dampward timetable answer"}, {"version", 1}};
  json["placements"] = listed_json(answer.placements, [](const Placement& placement) {
    return Json{{"operation", placement.operation},
                {"start_min", placement.start},
                {"end_min", placement.end},
                {"people", placement.people},
                {"station", or_null(placement.station)}};
  });
  json["oven_stays"] = listed_json(answer.stays, [](const OvenStay& stay) {
    return Json{{"load", stay.load},
                {"oven", stay.oven},
                {"from_min", stay.occupied.from},
                {"to_min", stay.occupied.to}};
  });
  json["late"] = listed_json(answer.late, detail::late_json);
  json["unplaced"] = listed_json(answer.unplaced, detail::unplaced_json);
  json["finish_min"] = answer.finish;
  return document(json);
}

}  // namespace dampward::files
