#pragma once

#include <vector>

#include "core/papers/oven_sheet.h"
#include "workbench/plan.h"

namespace dampward::workbench {

// One for each load, in order of time; their feet are left empty.
std::vector<papers::OvenSheet> oven_sheets(const Plan& plan);

}  // namespace dampward::workbench
