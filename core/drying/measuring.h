#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/drying/bake.h"
#include "core/drying/no_heat.h"

namespace dampward::drying {

// One measurement that may let a piece into the oven.
struct Measurement {
  PartId part;
  std::string name;
  Temperature shown;   // what it is reckoned to show
  Temperature needed;  // what it must show at least for any bake in this oven
  std::string settle;  // how to do it
};

// What knowing more would save.
struct Saving {
  std::vector<Measurement> measure;  // all of them are needed together
  Duration bake;                     // start, warm-up and hold then
  Temperature set;
  Duration without;  // what the dry box takes now
  Duration saved() const { return without - bake; }
};

// For a piece that this oven does not bake because limits are low from ignorance: what measuring them would
// bring, first with the likely result, else with the best possible one. Nothing where measuring would not let
// it in or would save no time.
std::optional<Saving> saved_by_measuring(const OvenPiece& piece, const shop::Oven& oven, const Wall& wall,
                                         const moist_air::HumidAir& shop_air, const DryRules& rules = {},
                                         const DryBox& box = {});

}  // namespace dampward::drying
