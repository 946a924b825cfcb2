#include "workbench/detail/load_recipe.h"

#include <algorithm>

#include "core/base/format.h"
#include "core/base/promise.h"
#include "core/drying/recipe.h"

namespace dampward::workbench {
namespace {

std::string whole_celsius(Temperature t) {
  return fixed(t.celsius(), 0) + " °C";
}
std::string hours(Duration time) {
  return fixed(time.in(hour), 1) + " h";
}

// The units of a planned load by kind; what is in its draft and found no time stays out.
struct KindUnits {
  const drying::OvenPiece* piece;
  std::vector<UnitId> units;
};
std::vector<KindUnits> by_kind(const Load& load, const Drafts& drafts) {
  std::vector<KindUnits> kinds;
  for (const UnitId& serial : load.units) {
    const auto unit = std::find_if(drafts.units.begin(), drafts.units.end(),
                                   [&](const UnitDraft& u) { return u.queued->serial == serial; });
    const drying::OvenPiece* piece = &unit->kind->piece;
    const auto known =
        std::find_if(kinds.begin(), kinds.end(), [&](const KindUnits& k) { return k.piece == piece; });
    if (known == kinds.end()) {
      kinds.push_back({piece, {serial}});
    } else {
      known->units.push_back(serial);
    }
  }
  return kinds;
}

std::string listed(const std::vector<UnitId>& units) {
  std::string all;
  for (const UnitId& unit : units) all += (all.empty() ? "" : ", ") + unit.text;
  return all;
}

std::vector<UnitId> units_of(const std::vector<KindId>& wanted, const std::vector<KindUnits>& kinds) {
  std::vector<UnitId> units;
  for (const KindUnits& kind : kinds) {
    if (std::find(wanted.begin(), wanted.end(), kind.piece->kind) != wanted.end())
      units.insert(units.end(), kind.units.begin(), kind.units.end());
  }
  return units;
}

std::string words_of(const Load& load) {
  if (load.costs.empty()) return "All of one kind: splitting it gains nothing but a smaller oven load.";
  const auto weakest =
      std::find_if(load.costs.begin(), load.costs.end(), [](const auto& c) { return c.weakest; });
  std::string words;
  if (weakest != load.costs.end()) {
    words = format("Without {} the others would stand at {} and be out {} sooner.", listed(weakest->units),
                   whole_celsius(weakest->set_without), hours(weakest->costs));
  }
  if (load.split.empty()) return words + " Splitting the load gains nobody half an hour.";
  return words + format(" Split it: {} at {} for {}, {} at {} for {}.", listed(load.split[0].units),
                        whole_celsius(load.split[0].set_point), hours(load.split[0].in_oven),
                        listed(load.split[1].units), whole_celsius(load.split[1].set_point),
                        hours(load.split[1].in_oven));
}

}  // namespace

void tell_recipes(std::vector<Load>& loads, const Drafts& drafts, const Workshop& workshop,
                  const moist_air::HumidAir& air) {
  for (Load& load : loads) {
    const auto draft = std::find_if(drafts.loads.begin(), drafts.loads.end(),
                                    [&](const LoadDraft& d) { return d.id == load.id; });
    DAMPWARD_PROMISE(draft != drafts.loads.end(), "every load told was drafted");
    const drying::Wall* wall = workshop.walls.find(draft->oven->wall);
    DAMPWARD_PROMISE(wall != nullptr, "every oven read from a folder has a known wall");
    const std::vector<KindUnits> kinds = by_kind(load, drafts);
    std::vector<drying::LoadUnits> pieces;
    for (const KindUnits& kind : kinds) pieces.push_back({kind.piece, static_cast<int>(kind.units.size())});
    const drying::Recipe recipe = drying::recipe_of(*draft->oven, *wall, pieces, draft->bake, air);
    for (const drying::KindCost& cost : recipe.costs) {
      load.costs.push_back({units_of({cost.kind}, kinds), cost.set_without, cost.costs,
                            cost.kind == draft->bake.weakest_kind});
    }
    for (const drying::SplitLoad& split : recipe.split)
      load.split.push_back({units_of(split.kinds, kinds), split.set, split.hold, split.in_oven});
    load.recipe = words_of(load);
  }
}

}  // namespace dampward::workbench
