#pragma once

#include <string>
#include <vector>

#include "core/records/records.h"
#include "workbench/detail/plan_air.h"
#include "workbench/detail/unit_draft.h"
#include "workbench/plan.h"

namespace dampward::workbench {

// Lacquer and thinner for all the units, against what is in stock and not past its date on the day of the last coat. Lots
// stand in the order to use them: first expired first, those without a date last.
std::vector<StockNeed> stock_needs(const std::vector<UnitDraft>& units, const PaintShop& paint,
                                   const std::vector<records::StockLot>& stock, Date last_coat);

// The spray place over the whole timetable: the air of all that gets loose there, and the steady source of the strongest gun in use
// (where nothing is planned, the strongest the shop owns).
RoomAir room_report(const std::vector<UnitDraft>& units, const PaintShop& paint, const shop::Shop& shop,
                    const PlanAir& air, Instant from, const WallClock& clock);

// The rows of the hazard table for every step the plan takes, each once, in table order.
std::vector<Caution> cautions_for(const std::vector<UnitPlan>& units,
                                  const std::vector<hazards::Hazard>& table);

// What the plan says aside: disagreements between the trade and what is published, shortages, doubts, each a sentence.
std::vector<std::string> warnings_for(const std::vector<UnitDraft>& units,
                                      const std::vector<LoadDraft>& loads, const PaintShop& paint,
                                      const shop::Shop& shop, const Plan& plan);

}  // namespace dampward::workbench
