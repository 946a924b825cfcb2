#pragma once

#include <vector>

#include "core/history/history.h"
#include "workbench/plan.h"

namespace dampward::workbench {

// Every step both plans have that begins at another time, in order of its new beginning, with a sentence that says why. `plan` is
// the one from the log on (its rework filled in), `before` the units of the plan without it.
std::vector<MovedStep> moved_steps(const std::vector<UnitPlan>& before, const Plan& plan,
                                   const history::History& history);

}  // namespace dampward::workbench
