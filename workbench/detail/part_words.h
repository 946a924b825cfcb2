#pragma once

#include "core/drying/bake.h"
#include "workbench/plan.h"

namespace dampward::workbench {

// One part of one unit as a bake leaves it, in the workshop's words.
PartInOven part_in_oven(const drying::PartBake& part, const UnitId& unit, const drying::OvenPiece& piece);

}  // namespace dampward::workbench
