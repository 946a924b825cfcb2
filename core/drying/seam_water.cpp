#include "core/drying/seam_water.h"

#include <algorithm>

#include "core/drying/surface_drying.h"

namespace dampward::drying {

Duration seam_time(std::span<const LoadUnits> load, const shop::Oven& oven, Temperature air,
                   const moist_air::HumidAir& shop_air, Side side) {
  const Length extra =
      side == Side::safe ? trapped_film.high - wiped_film.high : trapped_film.typical - wiped_film.typical;
  Duration longest;
  for (const LoadUnits& units : load) {
    const OvenPiece& piece = *units.piece;
    if (std::none_of(piece.parts.begin(), piece.parts.end(),
                     [](const OvenPart& part) { return part.traps_damp; }))
      continue;
    const WetLoad seam{square_metre, surface_convection(piece.flow_length, oven.air_moves, air)};
    longest = std::max(longest, dry_off(seam, extra, air, shop_air, well_aired).time);
  }
  return longest;
}

}  // namespace dampward::drying
