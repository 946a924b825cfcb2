#pragma once

#include <string>
#include <vector>

#include "workbench/plan.h"

namespace dampward::workbench {

// Rows of the hazard table that speak of this step of this unit, in the table's order; what holds at every step stands in none.
std::vector<std::string> hazards_at(const UnitPlan& unit, const UnitStep& step, const Plan& plan);
// What holds at every step, or in the mixing of a pot.
std::vector<std::string> hazards_of(const std::string& step, const Plan& plan);

}  // namespace dampward::workbench
