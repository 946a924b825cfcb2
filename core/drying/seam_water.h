#pragma once

#include <span>

#include "core/drying/oven_piece.h"
#include "core/drying/part_drying.h"
#include "core/moist_air/humid_air.h"
#include "core/shop/shop.h"

namespace dampward::drying {

// What seams, sockets and screw holes need beyond the surface, in an oven that is warm and aired: the film they trap over
// the one that a wiped surface keeps, at the wet bulb. Zero where no part of the load traps damp.
Duration seam_time(std::span<const LoadUnits> load, const shop::Oven& oven, Temperature air,
                   const moist_air::HumidAir& shop_air, Side side);

}  // namespace dampward::drying
