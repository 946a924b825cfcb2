#include "workbench/detail/load_drafts.h"

#include <algorithm>
#include <map>
#include <optional>
#include <utility>

#include "core/base/promise.h"
#include "core/drying/oven_model.h"
#include "core/equipment/kind.h"

namespace dampward::workbench {
namespace {

using Cases = std::vector<const KindCase*>;

// Loads that wait for company at one time; the oldest then goes as it is, so that a long queue stays quick to draft.
constexpr std::size_t most_open = 8;

Volume load_volume(const std::vector<std::size_t>& units, const Cases& cases) {
  Volume sum;
  for (std::size_t unit : units) sum += equipment::outer_volume(*cases[unit]->kind);
  return sum;
}

// The oven's entry in the kind's list; nullptr: it does not bake the kind.
const OvenChoice* choice_of(const KindCase& kind, const shop::Oven& oven) {
  const auto found = std::find_if(kind.ovens.begin(), kind.ovens.end(),
                                  [&](const OvenChoice& c) { return c.oven == &oven; });
  return found == kind.ovens.end() ? nullptr : &*found;
}

using Pieces = std::vector<drying::LoadUnits>;

Pieces pieces_of(const std::vector<std::size_t>& units, const Cases& cases) {
  Pieces pieces;
  for (std::size_t unit : units) {
    const drying::OvenPiece* piece = &cases[unit]->piece;
    const auto known =
        std::find_if(pieces.begin(), pieces.end(), [&](const auto& p) { return p.piece == piece; });
    if (known == pieces.end()) {
      pieces.push_back({piece, 1});
    } else {
      ++known->count;
    }
  }
  return pieces;
}

// The bake of these units together; nothing where the oven does not bake them as one load.
std::optional<drying::BakePlan> bake_of(const Pieces& pieces, const shop::Oven& oven,
                                        const Workshop& workshop, const moist_air::HumidAir& air) {
  const drying::Wall* wall = workshop.walls.find(oven.wall);
  DAMPWARD_PROMISE(wall != nullptr, "every oven read from a folder has a known wall");
  const auto answer = drying::bake_load(oven, *wall, pieces, air);
  const auto* bake = std::get_if<drying::BakePlan>(&answer);
  return bake == nullptr ? std::nullopt : std::optional(*bake);
}

// Bakes already asked for: a long queue holds the same few mixtures over and over.
class Bakes {
 public:
  Bakes(const Workshop& workshop, const moist_air::HumidAir& air) : workshop_(workshop), air_(air) {}

  const std::optional<drying::BakePlan>& of(const Pieces& pieces, const shop::Oven& oven) {
    Key key{&oven, {}};
    for (const drying::LoadUnits& units : pieces) key.second.emplace_back(units.piece, units.count);
    std::sort(key.second.begin(), key.second.end());
    auto known = known_.find(key);
    if (known == known_.end())
      known = known_.emplace(std::move(key), bake_of(pieces, oven, workshop_, air_)).first;
    return known->second;
  }

 private:
  using Key = std::pair<const shop::Oven*, std::vector<std::pair<const drying::OvenPiece*, int>>>;
  const Workshop& workshop_;
  const moist_air::HumidAir& air_;
  std::map<Key, std::optional<drying::BakePlan>> known_;
};

// The load with one unit more; nothing where they do not go together.
std::optional<LoadDraft> joined(const LoadDraft& load, std::size_t unit, const Cases& cases, Bakes& bakes) {
  const OvenChoice* choice = choice_of(*cases[unit], *load.oven);
  if (load.units.size() >= most_units || choice == nullptr) return std::nullopt;
  std::vector<std::size_t> units = load.units;
  units.push_back(unit);
  if (load_volume(units, cases) > fullest * drying::inside_volume(*load.oven)) return std::nullopt;
  const auto& bake = bakes.of(pieces_of(units, cases), *load.oven);
  if (!bake || bake->in_oven() > choice->watched) return std::nullopt;
  for (std::size_t member : units) {
    const Duration alone = choice_of(*cases[member], *load.oven)->alone.in_oven();
    if (bake->in_oven() > longest_wait * alone) return std::nullopt;
  }
  LoadDraft larger = load;
  larger.units = std::move(units);
  larger.bake = *bake;
  return larger;
}

}  // namespace

std::vector<LoadDraft> draft_loads(const Cases& cases, const Workshop& workshop,
                                   const moist_air::HumidAir& air) {
  Bakes bakes(workshop, air);
  std::vector<LoadDraft> loads;
  std::map<const shop::Oven*, Duration> busy;
  std::vector<std::size_t> open;  // loads that may still take units, oldest first
  for (std::size_t unit = 0; unit < cases.size(); ++unit) {
    bool placed = false;
    for (auto load = open.begin(); load != open.end(); ++load) {
      if (auto larger = joined(loads[*load], unit, cases, bakes)) {
        busy[larger->oven] += larger->bake.in_oven() - loads[*load].bake.in_oven();
        loads[*load] = std::move(*larger);
        if (loads[*load].units.size() == most_units) open.erase(load);
        placed = true;
        break;
      }
    }
    if (placed) continue;
    const auto& choices = cases[unit]->ovens;
    const auto soonest =
        std::min_element(choices.begin(), choices.end(), [&](const OvenChoice& a, const OvenChoice& b) {
          return busy[a.oven] + a.alone.in_oven() < busy[b.oven] + b.alone.in_oven();
        });
    DAMPWARD_PROMISE(soonest != choices.end(), "units handed to the loads have an oven");
    busy[soonest->oven] += soonest->alone.in_oven();
    open.push_back(loads.size());
    if (open.size() > most_open) open.erase(open.begin());
    loads.push_back({"L" + std::to_string(loads.size() + 1), soonest->oven, {unit}, soonest->alone});
  }
  return loads;
}

std::vector<LoadDraft> halved(const LoadDraft& load, const Cases& cases, const Workshop& workshop,
                              const moist_air::HumidAir& air) {
  const auto middle = load.units.begin() + static_cast<std::ptrdiff_t>((load.units.size() + 1) / 2);
  std::vector<LoadDraft> halves;
  for (const auto& units : {std::vector(load.units.begin(), middle), std::vector(middle, load.units.end())}) {
    const auto bake = bake_of(pieces_of(units, cases), *load.oven, workshop, air);
    DAMPWARD_PROMISE(bake.has_value(), "part of a load bakes wherever the whole does");
    halves.push_back({load.id + (halves.empty() ? "a" : "b"), load.oven, units, *bake});
  }
  return halves;
}

drying::StepDownAnswer stepped_down(const LoadDraft& load, const Cases& cases, const Workshop& workshop,
                                    const moist_air::HumidAir& air, Temperature hottest) {
  const drying::Wall* wall = workshop.walls.find(load.oven->wall);
  DAMPWARD_PROMISE(wall != nullptr, "every oven read from a folder has a known wall");
  return drying::step_down(*load.oven, *wall, pieces_of(load.units, cases), load.bake, air, hottest);
}

std::optional<LoadDraft> load_in(const std::string& id, const shop::Oven& oven,
                                 std::vector<std::size_t> units, const Cases& cases, const Workshop& workshop,
                                 const moist_air::HumidAir& air) {
  const auto bake = bake_of(pieces_of(units, cases), oven, workshop, air);
  if (!bake) return std::nullopt;
  return LoadDraft{id, &oven, std::move(units), *bake};
}

}  // namespace dampward::workbench
