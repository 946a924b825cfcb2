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
#include "workbench/plan.h"

namespace dampward::workbench {

// Where the dew-point margin never runs out, damp still goes back into slow parts: the last flash ends within this time of
// leaving the oven. An estimate: a 1.6 mm laminate takes back an eighth of its equilibrium water in 4 h at 30 °C.
inline constexpr Duration regain_allows = 4 * hour;

// One unit with its route and, once its drying is known, its window.
struct UnitDraft {
  const records::QueuedUnit* queued = nullptr;
  const KindCase* kind = nullptr;
  route::Route route;
  std::optional<CoatCase> coat;
  std::optional<coating::WarmWindow>
      window;  // none: dried without heat, so at room temperature when it meets the gun
  std::optional<coating::WarmCoatViews> trade;
  std::size_t load = 0;  // place in the list of loads; meaningless without heat
  std::optional<Refusal> refused;
};

// When the last flash must be over: the dew-point margin, or the damp going back where that comes sooner.
Duration window_closes(const coating::WarmWindow& window);
bool closed_by_regain(const coating::WarmWindow& window);

// The draft of a unit that bakes in this load, or, with no load, dries without heat. A unit that cannot be coated safely
// comes back refused, with the reason.
UnitDraft draft_unit(const records::QueuedUnit& queued, const KindCase& kind, const LoadDraft* load,
                     const route::Means& means, const PaintShop& paint, const RulingAir& air);

// Why a unit at room temperature may not meet lacquer in this air; empty: it may.
std::string barrier_to_cold_coat(const CoatCase& coat, const PaintShop& paint, const RulingAir& air);

}  // namespace dampward::workbench
