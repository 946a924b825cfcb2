#pragma once

#include <vector>

#include "core/papers/safety_sheet.h"
#include "workbench/plan.h"

namespace dampward::workbench {

// One for the spray place, its foot left empty; none where nothing is coated.
std::vector<papers::SafetySheet> safety_sheets(const Plan& plan);

}  // namespace dampward::workbench
