#pragma once

#include <string>
#include <vector>

#include "apps/cli/unit_text.h"
#include "workbench/plan.h"
#include "workbench/plan_difference.h"

namespace dampward::cli {

// What a change makes of a plan, at most 40 lines of 80 columns: the changes, how the two plans stand, and what moved, the
// weightiest first.
std::vector<std::string> what_if_summary(const workbench::Plan& before, const workbench::Plan& after,
                                         const workbench::PlanDifference& difference, const UnitText& units);

}  // namespace dampward::cli
