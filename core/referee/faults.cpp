#include "core/referee/faults.h"

#include "core/referee/detail/fault_rules.h"

namespace dampward::referee {

std::vector<Fault> faults(const PlanProblem& problem) {
  const Index index(problem);
  Faults found;
  for (const auto& family : {fault_names, fault_spans, fault_skills, fault_gaps, fault_loads, fault_fixed})
    family(index, found);
  return found;
}

}  // namespace dampward::referee
