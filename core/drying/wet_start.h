#pragma once

#include <span>

#include "core/drying/oven_model.h"
#include "core/drying/oven_piece.h"
#include "core/drying/part_drying.h"
#include "core/moist_air/humid_air.h"
#include "core/shop/shop.h"

namespace dampward::drying {

// The wet start of a bake: the film dries off at the wet bulb, then fresh air carries the vapour out. Until
// it is over no part counts as warming, which errs on the safe side.
struct WetStart {
  Duration time;
  Mass water;
  Duration traps;  // what seams, sockets and screw holes need beyond that; zero where the load has none
};

// Longer of two: what surface and fresh air let go (`dry_off`), and what the heater can pay for, with half
// the loss at the set point taken off while the oven is on its way; then the airing to `driest_needed`.
// Promise: the shop's air brought to the set point is drier than that.
WetStart wet_start(std::span<const LoadUnits> load, const shop::Oven& oven, const OvenHeat& heat,
                   Temperature set, const moist_air::HumidAir& shop_air, RelativeHumidity driest_needed,
                   Side side);

}  // namespace dampward::drying
