#include "core/referee/judge.h"

#include "core/referee/detail/rules.h"

namespace dampward::referee {

std::vector<Violation> judge(const PlanProblem& problem, const PlanAnswer& answer) {
  const Case open(problem, answer);
  Violations found;
  for (const auto& family :
       {judge_names, judge_whole, judge_lengths, judge_fixed, judge_gaps, judge_people, judge_shifts,
        judge_heat, judge_stations, judge_ovens, judge_loads, judge_capacities, judge_solvent, judge_told})
    family(open, found);
  return found;
}

}  // namespace dampward::referee
