#pragma once

#include <functional>
#include <map>
#include <set>
#include <string>
#include <vector>

#include "core/line/answer.h"
#include "core/moist_air/humid_air.h"
#include "workbench/detail/unit_draft.h"

namespace dampward::workbench {

using QueuedUnits = std::vector<const records::QueuedUnit*>;

// What stays the same however often loads are drafted.
struct DraftingTable {
  const Workshop& workshop;
  const route::Means& means;
  const PaintShop& paint;
  const moist_air::HumidAir& humid_air;
  const RulingAir& air;
  const std::map<KindId, KindCase>& cases;
  const std::function<void(const std::string&)>& progress;
};

// Loads and the units that are treated, in them or without heat; and those that turned out refused.
struct Drafts {
  std::vector<LoadDraft> loads;
  std::vector<UnitDraft> units;
  std::vector<Refusal> refused;
};

// Drafts units that bake and units dried cold, in the order given. When a unit of a load is refused the loads are drafted
// again without it: a weak unit that is not coming must not hold the others back.
Drafts draft_all(QueuedUnits baked, const QueuedUnits& cold, const DraftingTable& table);

// Adds the load and its units, which `units` lists by the places its members name; refused ones go to `refused` instead. Where
// some unit finds no window hot from the oven, and does when the oven is stepped down and the load held there, it is held.
void add_load(Drafts& drafts, const LoadDraft& load, const QueuedUnits& units, const DraftingTable& table);

// The same with every load halved for which the line found no time; the same drafts where none can be halved. Loads
// in `stay` (places in the drafts) are left as they are.
struct Halving {
  Drafts drafts;
  bool changed = false;
};
Halving halve_unplaced(const Drafts& drafts, const line::Answer& answer, const DraftingTable& table,
                       const std::set<std::size_t>& stay = {});

std::vector<const KindCase*> cases_of(const QueuedUnits& units, const DraftingTable& table);

}  // namespace dampward::workbench
