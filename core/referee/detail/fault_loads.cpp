#include <algorithm>
#include <map>

#include "core/referee/detail/case.h"
#include "core/referee/detail/fault_rules.h"

namespace dampward::referee {
namespace {

struct LoadFaults {
  const Index& index;
  Faults& found;
  std::map<std::string_view, std::string> placed;  // where an operation already is in a load

  void say(std::string path, std::string what, std::string right) {
    found.push_back({std::move(path), std::move(what), std::move(right)});
  }

  void once(const std::string& operation, const std::string& path) {
    const auto [first, fresh] = placed.emplace(operation, path);
    if (!fresh)
      say(path, format("\"{}\", as {} is", operation, first->second), "one place in loads for an operation");
  }

  void bake(const Load& load, std::size_t i) {
    const std::string path = at("loads", i, "bake");
    once(load.bake, path);
    const Operation* bake = index.operation(load.bake);
    if (bake && (bake->attendance != Attendance::watched || bake->unit))
      say(path, format("\"{}\", which {}", load.bake, bake->unit ? "belongs to a unit" : "is not watched"),
          "a watched operation of no unit");
  }

  void member(const Load& load, const Member& member, const std::string& path) {
    once(member.loading, path + ".loading");
    once(member.unloading, path + ".unloading");
    const Operation *in = index.operation(member.loading), *out = index.operation(member.unloading);
    const Operation* bake = index.operation(load.bake);
    if (in && out &&
        (in->attendance != Attendance::attended || out->attendance != Attendance::attended || !in->unit ||
         in->unit != out->unit))
      say(path, format("\"{}\" and \"{}\"", member.loading, member.unloading),
          "two attended operations of one unit");
    if (bake && bake->length < member.needs)
      say(path + ".needs_min",
          format("{}, but the bake \"{}\" lasts {} min", member.needs, load.bake, bake->length),
          "a bake no shorter than each member needs");
    const bool asks = member.coldest_c || member.hottest_c;
    if (asks && !load.setting_c)
      say(path, "limits of the setting where the load has no setting_c",
          "a setting_c for the load, or no limits");
    if (load.setting_c && member.coldest_c && *load.setting_c < *member.coldest_c - rounding)
      say(path + ".coldest_c", format("{}, but the setting is {}", *member.coldest_c, *load.setting_c),
          "a setting that each member stands");
    if (load.setting_c && member.hottest_c && *load.setting_c > *member.hottest_c + rounding)
      say(path + ".hottest_c", format("{}, but the setting is {}", *member.hottest_c, *load.setting_c),
          "a setting that each member stands");
  }

  void size(const Load& load, std::size_t i) {
    double volume = 0, mass = 0;
    for (const Member& each : load.members) {
      volume += each.volume_l;
      mass += each.mass_kg;
    }
    const auto takes = [&](const std::string& id) {
      const auto known = index.ovens.find(id);
      if (known == index.ovens.end()) return true;  // told elsewhere
      const Oven& oven = index.problem.ovens[known->second];
      return (!oven.volume_l || volume <= *oven.volume_l + rounding) &&
             (!oven.mass_kg || mass <= *oven.mass_kg + rounding);
    };
    if (!load.ovens.empty() && std::none_of(load.ovens.begin(), load.ovens.end(), takes))
      say(at("loads", i, "members"), format("{} l and {} kg together", volume, mass),
          "a load that one of its ovens can take");
  }
};

}  // namespace

void fault_loads(const Index& index, Faults& found) {
  LoadFaults faults{index, found, {}};
  const auto& loads = index.problem.loads;
  for (std::size_t i = 0; i < loads.size(); ++i) {
    if (loads[i].ovens.empty()) faults.say(at("loads", i, "ovens"), "an empty list", "one or more ovens");
    if (loads[i].members.empty())
      faults.say(at("loads", i, "members"), "an empty list", "one or more members");
    faults.bake(loads[i], i);
    for (std::size_t j = 0; j < loads[i].members.size(); ++j)
      faults.member(loads[i], loads[i].members[j], at("loads", i, at("members", j)));
    faults.size(loads[i], i);
  }
}

void fault_fixed(const Index& index, Faults& found) {
  const auto& fixed = index.problem.fixed;
  std::map<std::string_view, std::size_t> first;
  for (std::size_t i = 0; i < fixed.size(); ++i) {
    const auto [place, fresh] = first.emplace(fixed[i].operation, i);
    if (!fresh)
      found.push_back({at("fixed", i, "operation"),
                       format("\"{}\", as {} is", fixed[i].operation, at("fixed", place->second)),
                       "each operation at most once"});
    if (fixed[i].end < fixed[i].start || fixed[i].end > index.problem.horizon)
      found.push_back(
          {at("fixed", i, "end_min"), format("{}", fixed[i].end),
           format("from its start, {}, to the horizon, {}", fixed[i].start, index.problem.horizon)});
  }
  const PlanAnswer nothing;
  const Case open(index.problem, nothing);
  for (std::size_t i = 0; i < index.problem.loads.size(); ++i) {
    const Load& load = index.problem.loads[i];
    const FixedOven oven = open.fixed_oven(load);
    if (!oven.any_fixed) continue;
    if (oven.disagree) {
      found.push_back({at("loads", i),
                       format("fixed operations of \"{}\" that name different ovens", load.id),
                       "one oven for all that is fixed of a load"});
    } else if (!oven.id) {
      found.push_back({at("loads", i, "ovens"),
                       format("{} ovens, and no fixed operation of \"{}\" that names the one it is in",
                              load.ovens.size(), load.id),
                       "the oven as station of one of its fixed operations"});
    }
  }
}

}  // namespace dampward::referee
