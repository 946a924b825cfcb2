#pragma once

#include <string>
#include <vector>

#include "apps/cli/toned.h"
#include "apps/cli/unit_text.h"
#include "workbench/plan.h"
#include "workbench/plan_difference.h"

namespace dampward::cli {

// What a change makes of a plan, at most 40 lines where 80 columns or more are there: the changes, how the two plans stand, and what moved, the
// weightiest first.
std::vector<Line> what_if_summary(const workbench::Plan& before, const workbench::Plan& after,
                                  const workbench::PlanDifference& difference, const UnitText& units,
                                  std::size_t width);

}  // namespace dampward::cli
