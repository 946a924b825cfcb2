#pragma once

#include <map>
#include <string>
#include <vector>

#include "core/line/answer.h"
#include "workbench/detail/shop_line.h"
#include "workbench/plan.h"

namespace dampward::workbench {

// Placements by operation.
using Placed = std::map<std::string, const line::Placement*>;
Placed placed_operations(const line::Answer& answer);

// The answer of the line, told back in the workshop's words. Units without a place in `placed` are left out.
std::vector<Load> report_loads(const std::vector<LoadDraft>& loads, const std::vector<UnitDraft>& units,
                               const PaintShop& paint, const Placed& placed, Instant from);
std::vector<Window> report_windows(const std::vector<LoadDraft>& loads, const std::vector<UnitDraft>& units,
                                   const Placed& placed, Instant from);
std::vector<UnitPlan> report_units(const std::vector<LoadDraft>& loads, const std::vector<UnitDraft>& units,
                                   const Placed& placed, const WallClock& clock, Instant from);

}  // namespace dampward::workbench
