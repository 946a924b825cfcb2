#pragma once

#include "adapters/files/json_values.h"
#include "core/base/civil_time.h"
#include "workbench/plan_difference.h"

namespace dampward::files::detail {

// `what_if` of the plan's document: each figure that moved, as it was and as it would be.
Json what_if_json(const workbench::PlanDifference& difference, const WallClock& clock);

}  // namespace dampward::files::detail
