#pragma once

#include <string>
#include <vector>

#include "core/line/answer.h"
#include "core/line/calendar.h"
#include "core/line/problem.h"
#include "workbench/detail/unit_draft.h"

namespace dampward::workbench {

// The drafts as a scheduling problem: who can do what when, which steps follow which, what the ovens hold and how much vapour
// the spray place takes. Minutes count from `from`; the horizon lies as far beyond minute `now` as the queue may need.
line::Problem shop_line(const std::vector<UnitDraft>& units, const std::vector<LoadDraft>& loads,
                        const shop::Shop& shop, const PaintShop& paint, Instant from, line::Minute now = 0);

// The operation a step of a unit becomes. The bakes of one load are a single operation, shared by its units.
std::string operation_id(const UnitDraft& unit, const route::Step& step, const std::vector<LoadDraft>& loads);

}  // namespace dampward::workbench
