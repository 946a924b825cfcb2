#pragma once

#include <vector>

#include "core/papers/day_sheet.h"
#include "workbench/plan.h"

namespace dampward::workbench {

// One for each person with a hand in the plan, in the order of the crew; their feet are left empty.
std::vector<papers::DaySheet> day_sheets(const Plan& plan);

}  // namespace dampward::workbench
