#pragma once

#include <vector>

#include "core/papers/mixing_sheet.h"
#include "core/papers/oven_sheet.h"
#include "workbench/plan.h"

namespace dampward::workbench {

// One for each load and one for each pot, in order of time; their feet are left empty.
std::vector<papers::OvenSheet> oven_sheets(const Plan& plan);
std::vector<papers::MixingSheet> mixing_sheets(const Plan& plan);

}  // namespace dampward::workbench
