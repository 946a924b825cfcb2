#include "core/drying/wet_start.h"

#include <algorithm>

#include "core/drying/surface_drying.h"

namespace dampward::drying {
namespace {

struct WetLoadWithTraps {
  WetLoad wet;
  bool traps = false;
};

WetLoadWithTraps wet_load(std::span<const LoadUnits> load, const shop::Oven& oven, Temperature set,
                          Side side) {
  WetLoadWithTraps answer;
  HeatConductance exchange;
  for (const LoadUnits& units : load) {
    const OvenPiece& piece = *units.piece;
    const Area wet = units.count * (side == Side::safe ? piece.wet_surface.high : piece.wet_surface.typical);
    answer.wet.area += wet;
    exchange += wet * surface_convection(piece.flow_length, oven.air_moves, set);
    for (const OvenPart& part : piece.parts) answer.traps = answer.traps || part.traps_damp;
  }
  if (answer.wet.area > Area{}) answer.wet.convection = exchange / answer.wet.area;
  return answer;
}

}  // namespace

WetStart wet_start(std::span<const LoadUnits> load, const shop::Oven& oven, const OvenHeat& heat,
                   Temperature set, const moist_air::HumidAir& shop_air, RelativeHumidity driest_needed,
                   Side side) {
  const auto [wet, traps] = wet_load(load, oven, set, side);
  const Length film = side == Side::safe ? wiped_film.high : wiped_film.typical;
  const VolumeFlow fresh = fresh_air(oven);
  const Plateau plateau = dry_off(wet, film, set, shop_air, fresh);
  const Duration airing =
      airing_time(plateau.surface, driest_needed, set, shop_air, inside_volume(oven), fresh);
  const Power net = heat.available - 0.5 * (heat.loss * (set - shop_air.temperature));
  const Duration paid_for = plateau.water * evaporation_heat(plateau.surface) / net;
  WetStart answer{.time = std::max(plateau.time, paid_for) + airing, .water = plateau.water, .traps = {}};
  if (traps) {
    const Length extra = (side == Side::safe ? trapped_film.high : trapped_film.typical) - film;
    answer.traps = dry_off({square_metre, wet.convection}, extra, set, shop_air, well_aired).time;
  }
  return answer;
}

}  // namespace dampward::drying
