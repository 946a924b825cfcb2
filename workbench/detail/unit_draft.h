#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/coating/warm_window.h"
#include "core/records/records.h"
#include "core/route/route.h"
#include "workbench/detail/coat_case.h"
#include "workbench/detail/kind_case.h"
#include "workbench/detail/load_drafts.h"
#include "workbench/detail/unit_window.h"
#include "workbench/plan.h"

namespace dampward::workbench {

// One unit with its route and, once its drying is known, its window.
struct UnitDraft {
  const records::QueuedUnit* queued = nullptr;
  const KindCase* kind = nullptr;
  route::Route route;
  std::optional<CoatCase> coat;
  std::optional<coating::WarmWindow> window;  // none: refused before it came to that
  std::vector<PartRegain> regains;            // damp that goes back into it from leaving the oven on
  std::optional<coating::WarmCoatViews> trade;
  std::size_t load = 0;  // place in the list of loads; meaningless without heat
  std::optional<Refusal> refused;
};

// The draft of a unit that bakes in this load, or, with no load, dries without heat. A unit that cannot be coated safely
// comes back refused, with the reason.
UnitDraft draft_unit(const records::QueuedUnit& queued, const KindCase& kind, const LoadDraft* load,
                     const route::Means& means, const PaintShop& paint, const RulingAir& air);

// Why a unit at room temperature may not meet lacquer in this air; empty: it may.
std::string barrier_to_cold_coat(const KindCase& kind, const CoatCase& coat, const PaintShop& paint,
                                 const RulingAir& air);

}  // namespace dampward::workbench
