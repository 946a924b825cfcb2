#pragma once

#include "core/papers/step_words.h"
#include "workbench/plan.h"

namespace dampward::workbench {

// The sentence of the sheets that names this step of this unit.
papers::StepKey key_of(const UnitPlan& unit, const UnitStep& step);

}  // namespace dampward::workbench
