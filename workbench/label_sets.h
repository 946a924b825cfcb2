#pragma once

#include "core/papers/labels.h"
#include "workbench/plan.h"

namespace dampward::workbench {

// A label for every unit the plan treats, in its order, and a tag for every bag of what comes off it; the foot is left empty.
papers::LabelSet label_set(const Plan& plan);

}  // namespace dampward::workbench
