#pragma once

#include <vector>

#include "core/moist_air/humid_air.h"
#include "workbench/detail/drafts.h"
#include "workbench/plan.h"

namespace dampward::workbench {

// How to split each load, and what its weakest unit costs the others.
void tell_recipes(std::vector<Load>& loads, const Drafts& drafts, const Workshop& workshop,
                  const moist_air::HumidAir& air);

}  // namespace dampward::workbench
