#pragma once

#include <vector>

#include "core/papers/mask_set.h"
#include "workbench/plan.h"

namespace dampward::workbench {

// One for each kind the plan treats that has anything to mask; the foot is left empty.
std::vector<papers::MaskSet> mask_sets(const Plan& plan);

}  // namespace dampward::workbench
