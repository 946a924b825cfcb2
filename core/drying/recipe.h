#pragma once

#include <span>
#include <vector>

#include "core/drying/bake.h"

namespace dampward::drying {

// What one kind in a mixed load costs the others.
struct KindCost {
  KindId kind;
  Temperature set_without;  // where the oven would stand without it
  Duration costs;           // so much longer the others are in the oven with it; never below zero
};

// One of the loads a mixed one may be split into.
struct SplitLoad {
  std::vector<KindId> kinds;
  Temperature set;
  Duration hold, in_oven;
};

struct Recipe {
  std::vector<KindCost> costs;  // by kind, in the load's order; empty where there is one kind only
  std::vector<SplitLoad>
      split;  // tender kinds first, then the others; empty where splitting gains nobody enough
};

// A split that lets the hardier kinds out sooner by less than this is not worth a second firing. An estimate.
inline constexpr Duration worth_splitting = 30 * minute;

// The recipe for a load whose bake together is known. Splits are tried between kinds in the order of what their weakest
// part allows, and the one is kept that lets the hardier kinds out soonest. Each kind and each cut asks for one more
// bake of the same oven. Promise: the bake is that of the load.
Recipe recipe_of(const shop::Oven& oven, const Wall& wall, std::span<const LoadUnits> load,
                 const BakePlan& together, const moist_air::HumidAir& shop_air, const DryRules& rules = {});

}  // namespace dampward::drying
