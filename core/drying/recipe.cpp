#include "core/drying/recipe.h"

#include <algorithm>
#include <optional>

namespace dampward::drying {
namespace {

using Load = std::vector<LoadUnits>;

SplitLoad told(const Load& load, const BakePlan& bake) {
  SplitLoad split{{}, bake.set, bake.hold, bake.in_oven()};
  for (const LoadUnits& units : load) split.kinds.push_back(units.piece->kind);
  return split;
}

// Tenderest first.
Load by_weakness(std::span<const LoadUnits> load) {
  Load sorted(load.begin(), load.end());
  std::stable_sort(sorted.begin(), sorted.end(), [](const LoadUnits& a, const LoadUnits& b) {
    const auto allowed = [](const LoadUnits& units) {
      const OvenPart* weakest = units.piece->weakest();
      return weakest ? weakest->limit->allowed() : Temperature{};
    };
    return allowed(a) < allowed(b);
  });
  return sorted;
}

}  // namespace

Recipe recipe_of(const shop::Oven& oven, const Wall& wall, std::span<const LoadUnits> load,
                 const BakePlan& together, const moist_air::HumidAir& shop_air, const DryRules& rules) {
  Recipe recipe;
  if (load.size() < 2) return recipe;
  const auto bake = [&](const Load& some) -> std::optional<BakePlan> {
    const BakeAnswer answer = bake_load(oven, wall, some, shop_air, rules);
    const auto* plan = std::get_if<BakePlan>(&answer);
    return plan ? std::optional(*plan) : std::nullopt;
  };
  for (std::size_t i = 0; i < load.size(); ++i) {
    Load others(load.begin(), load.end());
    others.erase(others.begin() + static_cast<std::ptrdiff_t>(i));
    if (const auto without = bake(others)) {
      recipe.costs.push_back(
          {load[i].piece->kind, without->set, std::max(Duration{}, together.in_oven() - without->in_oven())});
    }
  }
  const Load sorted = by_weakness(load);
  Duration best = together.in_oven() - worth_splitting;
  for (std::size_t cut = 1; cut < sorted.size(); ++cut) {
    const auto middle = sorted.begin() + static_cast<std::ptrdiff_t>(cut);
    const Load tender(sorted.begin(), middle), hardy(middle, sorted.end());
    const auto sooner = bake(hardy);
    if (!sooner || sooner->in_oven() > best) continue;
    const auto first = bake(tender);
    if (!first) continue;
    best = sooner->in_oven();
    recipe.split = {told(tender, *first), told(hardy, *sooner)};
  }
  return recipe;
}

}  // namespace dampward::drying
