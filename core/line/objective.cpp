#include "core/line/objective.h"

#include <algorithm>
#include <map>
#include <string_view>
#include <vector>

namespace dampward::line {
namespace {

// Between whose hands each unit passes, in order of time.
std::int64_t hand_overs_of(const Problem& problem, const Answer& answer) {
  std::map<std::string_view, std::string_view> unit_of;
  for (const Operation& operation : problem.operations) unit_of[operation.id] = operation.unit;
  std::map<std::string_view, std::vector<const Placement*>> by_unit;
  for (const Placement& placement : answer.placements) {
    const std::string_view unit = unit_of.at(placement.operation);
    if (!unit.empty() && !placement.people.empty()) by_unit[unit].push_back(&placement);
  }
  std::int64_t count = 0;
  for (auto& [unit, all] : by_unit) {
    std::stable_sort(all.begin(), all.end(),
                     [](const Placement* a, const Placement* b) { return a->start < b->start; });
    for (std::size_t i = 1; i < all.size(); ++i) count += all[i]->people != all[i - 1]->people ? 1 : 0;
  }
  return count;
}

}  // namespace

Objective objective_of(const Problem& problem, const Answer& answer) {
  std::map<std::string_view, std::int64_t> weight;
  for (const Unit& unit : problem.units) weight[unit.id] = unit.weight;
  Objective objective;
  objective.left_out = static_cast<std::int64_t>(answer.unplaced.size());
  for (const Lateness& late : answer.late) objective.lateness += weight.at(late.unit) * late.late();
  objective.finish = answer.finish;
  for (const OvenStay& stay : answer.stays) objective.ovens += stay.occupied.length();
  objective.hand_overs = hand_overs_of(problem, answer);
  return objective;
}

}  // namespace dampward::line
