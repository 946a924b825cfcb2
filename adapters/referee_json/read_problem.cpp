#include "adapters/referee_json/detail/fields.h"
#include "adapters/referee_json/read.h"
#include "core/base/civil_time.h"
#include "core/referee/faults.h"

namespace dampward::referee_json {
namespace {

using Need = Fields::Need;

constexpr std::int64_t most_amount = 1'000'000'000'000;
constexpr std::size_t few = 1'000;  // people, stations, ovens, capacities
constexpr RealLimits litres_or_kilograms{0, 1e6};
constexpr RealLimits settings{-50, 400};

referee::Unit unit(Fields& keys) {
  referee::Unit unit;
  unit.id = keys.id("id");
  unit.due = keys.whole_or_none("due_min", any_minute);
  unit.priority = keys.whole("priority", {-1'000'000, 1'000'000}, 0);
  unit.weight = keys.whole("weight", {0, 1'000'000}, 1);
  unit.after_due = keys.ids("after_due", Need::may);
  return unit;
}

referee::Operation operation(Fields& keys) {
  referee::Operation operation;
  operation.id = keys.id("id");
  operation.unit = keys.id_or_none("unit");
  operation.length = keys.whole("length_min", {1, furthest});
  const std::string attendance = keys.word("attendance", {"attended", "watched", "unattended"}, false);
  operation.attendance = attendance == "attended"  ? referee::Attendance::attended
                         : attendance == "watched" ? referee::Attendance::watched
                                                   : referee::Attendance::unattended;
  operation.skill = keys.id_or_none("skill");
  operation.people = keys.whole("people", {1, 1'000}, 1);
  operation.pausable = keys.truth("pausable", false);
  operation.station_skill = keys.id_or_none("station_skill");
  operation.stations = keys.ids("stations", Need::may);
  operation.solvent = keys.truth("solvent", false);
  operation.clears = keys.whole("clears_min", some_minutes, 0);
  keys.each("demands", Need::may, longest_list, [&](Fields& demand) {
    operation.demands.push_back({demand.id("capacity"), demand.whole("amount", {0, most_amount}),
                                 demand.whole("tail_min", some_minutes, 0)});
  });
  return operation;
}

referee::Gap gap(Fields& keys) {
  referee::Gap gap;
  gap.name = keys.text("name", "");
  gap.from = keys.id("from");
  gap.to = keys.id("to");
  gap.shortest = keys.whole("shortest_min", some_minutes, 0);
  gap.longest = keys.whole_or_none("longest_min", some_minutes);
  return gap;
}

referee::Load load(Fields& keys) {
  referee::Load load;
  load.id = keys.id("id");
  load.ovens = keys.ids("ovens", Need::must);
  load.bake = keys.id("bake");
  load.setting_c = keys.real_or_none("setting_c", settings);
  keys.each("members", Need::must, longest_list, [&](Fields& each) {
    referee::Member member;
    member.loading = each.id("loading");
    member.unloading = each.id("unloading");
    member.needs = each.whole("needs_min", some_minutes, 0);
    member.volume_l = each.real("volume_l", litres_or_kilograms, 0);
    member.mass_kg = each.real("mass_kg", litres_or_kilograms, 0);
    member.coldest_c = each.real_or_none("coldest_c", settings);
    member.hottest_c = each.real_or_none("hottest_c", settings);
    load.members.push_back(member);
  });
  return load;
}

referee::Oven oven(Fields& keys) {
  referee::Oven oven;
  oven.id = keys.id("id");
  oven.powered = keys.spans("powered");
  oven.near_solvent = keys.truth("near_solvent", true);
  oven.cools = keys.whole("cools_min", some_minutes, 0);
  oven.volume_l = keys.real_or_none("volume_l", litres_or_kilograms);
  oven.mass_kg = keys.real_or_none("mass_kg", litres_or_kilograms);
  return oven;
}

referee::Fixed fixed(Fields& keys) {
  referee::Fixed fixed;
  fixed.operation = keys.id("operation");
  fixed.start = keys.whole("start_min", any_minute);
  fixed.end = keys.whole("end_min", any_minute);
  fixed.people = keys.ids("people", Need::may);
  fixed.station = keys.id_or_none("station");
  return fixed;
}

std::optional<std::string> starts_at(Fields& keys) {
  const auto text = keys.id_or_none("starts_at");
  if (text && !parse_instant(*text))
    keys.complain("starts_at", "\"" + *text + "\"", "a time with offset, such as 2026-11-30T07:00:00+03:00");
  return text;
}

void lists(Fields& keys, referee::PlanProblem& problem) {
  keys.each("units", Need::may, longest_list, [&](Fields& each) { problem.units.push_back(unit(each)); });
  keys.each("operations", Need::may, longest_list,
            [&](Fields& each) { problem.operations.push_back(operation(each)); });
  keys.each("gaps", Need::may, longest_list, [&](Fields& each) { problem.gaps.push_back(gap(each)); });
  keys.each("loads", Need::may, longest_list, [&](Fields& each) { problem.loads.push_back(load(each)); });
  keys.each("people", Need::may, few, [&](Fields& each) {
    problem.people.push_back(
        {each.id("id"), each.ids("skills", Need::may), each.spans("shifts"), each.spans("breaks")});
  });
  keys.each("stations", Need::may, few, [&](Fields& each) {
    problem.stations.push_back(
        {each.id("id"), each.whole("places", {1, 1'000}, 1), each.ids("serves", Need::may)});
  });
  keys.each("ovens", Need::may, few, [&](Fields& each) { problem.ovens.push_back(oven(each)); });
  keys.each("capacities", Need::may, few,
            [&](Fields& each) { problem.capacities.push_back({each.id("id"), each.steps("steps")}); });
  keys.each("fixed", Need::may, longest_list, [&](Fields& each) { problem.fixed.push_back(fixed(each)); });
}

}  // namespace

Result<referee::PlanProblem> read_problem(std::string_view text, const std::string& shown) {
  const auto tree = parse(text, shown);
  if (!tree) return tree.problems();
  Complaints complaints{shown, {}};
  referee::PlanProblem problem;
  Fields keys(complaints, *tree, "");
  if (!keys.is_object()) return complaints.problems;
  keys.exactly("format", "dampward timetable problem");
  keys.exactly("version", 1);
  problem.starts_at = starts_at(keys);
  problem.horizon = keys.whole("horizon_min", {1, furthest});
  problem.now = keys.whole("now_min", any_minute, 0);
  lists(keys, problem);
  keys.close();
  // Names and rings are looked at only where every figure could be read: places in the lists are right then.
  if (complaints.problems.empty()) {
    for (const referee::Fault& fault : referee::faults(problem))
      complaints.problems.push_back(
          {{shown, line_of(*tree, fault.path)}, fault.path + ": " + fault.found, fault.expected, ""});
  }
  if (!complaints.problems.empty()) return complaints.problems;
  return problem;
}

}  // namespace dampward::referee_json
