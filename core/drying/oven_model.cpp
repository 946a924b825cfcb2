#include "core/drying/oven_model.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/base/promise.h"
#include "core/drying/correlations.h"
#include "core/numerics/roots.h"
#include "core/shop/power.h"

namespace dampward::drying {
namespace {

constexpr Density fresh_air_density = 1.2 * kilogram_per_cubic_metre;
constexpr SpecificHeat air_heat = 1007 * joule_per_kilogram_kelvin;
constexpr SurfaceDensity lining = 7850 * kilogram_per_cubic_metre * millimetre;
constexpr SpecificHeat lining_heat = 470 * joule_per_kilogram_kelvin;
constexpr HeatTransferCoefficient inside_film = 9 * watt_per_square_metre_kelvin;
constexpr double leaks_per_hour = 0.5;
constexpr double usual_radiant_share = 0.8;
constexpr double dark = 0.95, dark_emissivity = 0.9;
constexpr Length lit_height = 100 * millimetre;
constexpr Speed lit_stream = 0.7 * metre_per_second;

Area inside_area(const shop::Oven& oven) {
  return 2 * (oven.inside_length * oven.inside_width + oven.inside_length * oven.inside_height +
              oven.inside_width * oven.inside_height);
}

}  // namespace

Volume inside_volume(const shop::Oven& oven) {
  return oven.inside_length * oven.inside_width * oven.inside_height;
}

OvenHeat oven_heat(const shop::Oven& oven, const Wall& wall, Loss loss) {
  const Range<HeatTransferCoefficient>& u = wall.loss.value;
  const Area area = inside_area(oven);
  return {.available = shop::draws(oven),
          .loss = (loss == Loss::highest  ? u.high
                   : loss == Loss::lowest ? u.low
                                          : u.typical) *
                      area +
                  oven.vent * fresh_air_density * air_heat,
          .own = area * lining * lining_heat + inside_volume(oven) * fresh_air_density * air_heat};
}

OvenNodes oven_nodes(const shop::Oven& oven, const Wall& wall, Loss loss,
                     const moist_air::HumidAir& oven_air) {
  const OvenHeat heat = oven_heat(oven, wall, loss);
  const Area area = inside_area(oven);
  const HeatCapacity air = inside_volume(oven) * fresh_air_density * air_heat;
  const HeatConductance vented = oven.vent * fresh_air_density * air_heat;
  const HeatConductance inside = inside_film * area, through = heat.loss - vented;
  // A wall that lets through nearly all the film does has next to no resistance of its own.
  const HeatConductance outside =
      HeatConductance::si(1 / std::max(1 / through.si() - 1 / inside.si(), 0.05 / inside.si()));
  const Density dry = moist_air::density(oven_air) - moist_air::vapour_density(oven_air);
  return {heat.available,       air, heat.own - air, inside, outside, vented, inside_volume(oven) * dry,
          fresh_air(oven) * dry};
}

Temperature reachable(const OvenHeat& oven, Temperature room) {
  return room + oven.available / oven.loss;
}

VolumeFlow fresh_air(const shop::Oven& oven) {
  return oven.vent + leaks_per_hour * inside_volume(oven) / hour;
}

std::optional<std::string> lamp_fault(const shop::Oven& oven) {
  if (!oven.lamps) return std::nullopt;
  const shop::Lamps& lamps = *oven.lamps;
  if (lamps.distance <= Length{}) {
    return "its lamps have no distance to the nearest lit part, so nobody can say how hot that part becomes";
  }
  if (!(lamps.beam_degrees > 0 && lamps.beam_degrees <= 360)) {
    return "its lamps have no beam angle between 0 and 360 degrees, so nobody can say how hot a lit part "
           "becomes";
  }
  return std::nullopt;
}

HeatFlux lamp_flux(const shop::Oven& oven) {
  DAMPWARD_PROMISE(oven.lamps && !lamp_fault(oven),
                   "lamps are reckoned with only when their distance and beam are known");
  const shop::Lamps& lamps = *oven.lamps;
  const double solid_angle =
      2 * std::numbers::pi * (1 - std::cos(lamps.beam_degrees / 2 * std::numbers::pi / 180));
  const Area lit = solid_angle * (lamps.distance * lamps.distance);
  const Area face = std::min({oven.inside_length * oven.inside_width, oven.inside_length * oven.inside_height,
                              oven.inside_width * oven.inside_height});
  const double meeting = std::min<double>(lamps.count, std::ceil(lamps.count * (lit / face)));
  return meeting * lamps.radiant_share.value_or(usual_radiant_share) * lamps.each / lit;
}

TemperatureStep lamp_rise(const shop::Oven& oven, Temperature air) {
  if (!oven.lamps || oven.lamps->count == 0) return {};
  const HeatFlux absorbed = dark * lamp_flux(oven);
  const auto surplus = [&](double rise) {
    const Temperature surface = air + rise * kelvin;
    const HeatTransferCoefficient convection = oven.air_moves
                                                   ? forced_convection(surface, air, lit_stream, lit_height)
                                                   : natural_convection(surface, air, lit_height);
    return (absorbed - rise * kelvin * (convection + radiation_coefficient(dark_emissivity, surface, air)))
        .si();
  };
  double high = 1;
  while (surplus(high) > 0) high *= 2;
  return numerics::root_between(surplus, 0, high, 1e-6) * kelvin;
}

}  // namespace dampward::drying
