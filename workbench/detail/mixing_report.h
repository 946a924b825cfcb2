#pragma once

#include <vector>

#include "core/records/records.h"
#include "workbench/detail/unit_draft.h"
#include "workbench/plan.h"

namespace dampward::workbench {

// The pots that serve every coat of the timetable, each way of putting lacquer on by itself, in order of time. Lots are drawn as the
// pots are mixed, so a lot that runs out of date half-way serves the pots before. `told` are the planned units with their
// times, `units` their drafts. Touch-up is done from the can and not counted.
std::vector<MixedPot> mixing_report(const std::vector<UnitDraft>& units, const std::vector<UnitPlan>& told,
                                    const PaintShop& paint, const std::vector<records::StockLot>& stock,
                                    const WallClock& clock);

}  // namespace dampward::workbench
