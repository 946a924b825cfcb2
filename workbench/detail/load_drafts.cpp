#include "workbench/detail/load_drafts.h"

#include <algorithm>
#include <map>
#include <optional>

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

Duration alone_in(const KindCase& kind, const shop::Oven& oven) {
  for (const OvenChoice& choice : kind.ovens) {
    if (choice.oven == &oven) return choice.alone.in_oven();
  }
  return Duration{};
}

bool bakes(const KindCase& kind, const shop::Oven& oven) {
  return std::any_of(kind.ovens.begin(), kind.ovens.end(),
                     [&](const OvenChoice& c) { return c.oven == &oven; });
}

// The bake of these units together; nothing where the oven does not bake them as one load.
std::optional<drying::BakePlan> bake_of(const std::vector<std::size_t>& units, const shop::Oven& oven,
                                        const Cases& cases, const Workshop& workshop,
                                        const moist_air::HumidAir& air) {
  std::vector<drying::LoadUnits> pieces;
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
  const drying::Wall* wall = workshop.walls.find(oven.wall);
  DAMPWARD_PROMISE(wall != nullptr, "every oven read from a folder has a known wall");
  const auto answer = drying::bake_load(oven, *wall, pieces, air);
  const auto* bake = std::get_if<drying::BakePlan>(&answer);
  return bake == nullptr ? std::nullopt : std::optional(*bake);
}

// The load with one unit more; nothing where they do not go together.
std::optional<LoadDraft> joined(const LoadDraft& load, std::size_t unit, const Cases& cases,
                                const Workshop& workshop, const moist_air::HumidAir& air) {
  if (load.units.size() >= most_units || !bakes(*cases[unit], *load.oven)) return std::nullopt;
  LoadDraft larger = load;
  larger.units.push_back(unit);
  if (load_volume(larger.units, cases) > fullest * drying::inside_volume(*load.oven)) return std::nullopt;
  const auto bake = bake_of(larger.units, *load.oven, cases, workshop, air);
  if (!bake) return std::nullopt;
  for (std::size_t member : larger.units) {
    if (bake->in_oven() > longest_wait * alone_in(*cases[member], *load.oven)) return std::nullopt;
  }
  larger.bake = *bake;
  return larger;
}

}  // namespace

std::vector<LoadDraft> draft_loads(const Cases& cases, const Workshop& workshop,
                                   const moist_air::HumidAir& air) {
  std::vector<LoadDraft> loads;
  std::map<const shop::Oven*, Duration> busy;
  std::vector<std::size_t> open;  // loads that may still take units, oldest first
  for (std::size_t unit = 0; unit < cases.size(); ++unit) {
    bool placed = false;
    for (auto load = open.begin(); load != open.end(); ++load) {
      if (auto larger = joined(loads[*load], unit, cases, workshop, air)) {
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
    const auto bake = bake_of(units, *load.oven, cases, workshop, air);
    DAMPWARD_PROMISE(bake.has_value(), "part of a load bakes wherever the whole does");
    halves.push_back({load.id + (halves.empty() ? "a" : "b"), load.oven, units, *bake});
  }
  return halves;
}

}  // namespace dampward::workbench
