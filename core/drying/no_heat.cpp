#include "core/drying/no_heat.h"

#include <algorithm>
#include <cmath>

#include "core/base/format.h"
#include "core/drying/part_drying.h"
#include "core/drying/surface_drying.h"

namespace dampward::drying {
namespace {

Temperature box_air(const OvenPiece& piece, const moist_air::HumidAir& shop_air, const DryBox& box) {
  const OvenPart* weakest = piece.weakest();
  if (!weakest || !piece.refusals.empty()) return shop_air.temperature;
  const Temperature whole = Temperature::celsius(std::floor(weakest->limit->allowed().celsius()));
  return std::max(shop_air.temperature, std::min(box.warm, whole));
}

// Surface water as fast as the desiccant takes it, then what seams keep, both in the box's still air.
Plateau film_time(const OvenPiece& piece, const moist_air::HumidAir& air, Area tray, Side side) {
  const bool safe = side == Side::safe;
  const HeatTransferCoefficient still = surface_convection(piece.flow_length, false, air.temperature);
  const WetLoad wet{safe ? piece.wet_surface.high : piece.wet_surface.typical, still};
  const Length film = safe ? wiped_film.high : wiped_film.typical;
  Plateau plateau = dry_off(wet, film, air.temperature, air, mass_transfer_coefficient(still) * tray);
  if (std::any_of(piece.parts.begin(), piece.parts.end(),
                  [](const OvenPart& part) { return part.traps_damp; })) {
    const Length extra = (safe ? trapped_film.high : trapped_film.typical) - film;
    plateau.time += dry_off({square_metre, still}, extra, air.temperature, air, well_aired).time;
  }
  return plateau;
}

}  // namespace

NoHeatPlan dry_without_heat(const OvenPiece& piece, const moist_air::HumidAir& shop_air, const DryBox& box) {
  NoHeatPlan plan;
  plan.air = box_air(piece, shop_air, box);
  plan.warmed = plan.air > shop_air.temperature;
  plan.humidity = box.humidity.high;
  const auto air_at = [&](RelativeHumidity humidity) {
    return moist_air::HumidAir{.temperature = plan.air, .humidity = humidity, .pressure = shop_air.pressure};
  };
  const Plateau slow = film_time(piece, air_at(box.humidity.high), box.tray, Side::safe);
  const Plateau usual = film_time(piece, air_at(box.humidity.typical), box.tray, Side::typical);
  plan.water = slow.water;
  Duration inside, inside_nominal;
  for (const OvenPart& part : piece.parts) {
    if (!part.asked || part.target == equipment::DryTarget::surface) continue;
    if (!part.body) {
      plan.unknown.push_back(part.id);
      continue;
    }
    const Duration time = time_to_dry(*part.body, plan.air, Side::safe);
    if (time > inside) {
      inside = time;
      plan.slowest_part = part.id;
    }
    inside_nominal = std::max(inside_nominal, time_to_dry(*part.body, plan.air, Side::typical));
  }
  plan.time = slow.time + inside;
  plan.time_nominal = usual.time + inside_nominal;
  plan.words = format("{} at {} °C with desiccant that keeps the box at {} % humidity or less",
                      plan.warmed ? "warm cabinet" : "closed box", fixed(plan.air.celsius(), 0),
                      fixed(plan.humidity.percent(), 0));
  return plan;
}

}  // namespace dampward::drying
