#include "core/drying/surface_drying.h"

#include <algorithm>
#include <cmath>

#include "core/drying/correlations.h"
#include "core/numerics/roots.h"

namespace dampward::drying {
namespace {

Density saturated(Temperature t) {
  return moist_air::vapour_density({.temperature = t, .humidity = RelativeHumidity::fraction(1)});
}

}  // namespace

HeatTransferCoefficient surface_convection(Length flow_length, bool air_moves, Temperature oven_air) {
  const Temperature surface = oven_air - 20 * kelvin;
  constexpr Speed gentle = 0.7 * metre_per_second;
  return air_moves ? forced_convection(surface, oven_air, gentle, flow_length)
                   : natural_convection(surface, oven_air, flow_length);
}

SpecificLatentHeat evaporation_heat(Temperature water) {
  return SpecificLatentHeat::si((2501 - 2.36 * water.celsius()) * 1e3);
}

Speed mass_transfer_coefficient(HeatTransferCoefficient convection) {
  constexpr double lewis = 0.865, density = 1.05, heat = 1008;
  return convection.si() / (density * heat * std::pow(lewis, 2.0 / 3)) * metre_per_second;
}

DepositionRate evaporation(Temperature surface, const moist_air::HumidAir& air, Speed mass_transfer) {
  return std::max(DepositionRate{}, mass_transfer * (saturated(surface) - moist_air::vapour_density(air)));
}

Plateau dry_off(const WetLoad& load, Length film, Temperature oven_air, const moist_air::HumidAir& intake,
                VolumeFlow fresh) {
  if (load.area <= Area{} || film <= Length{}) return {.surface = oven_air, .water = {}, .time = {}};
  const Density incoming = moist_air::vapour_density(moist_air::brought_to(intake, oven_air));
  const VolumeFlow surface_step = mass_transfer_coefficient(load.convection) * load.area;
  const VolumeFlow both = VolumeFlow::si(1 / (1 / surface_step.si() + 1 / fresh.si()));
  const auto surplus = [&](double celsius) {
    const Temperature surface = Temperature::celsius(celsius);
    const double heat_in = (load.convection * load.area * (oven_air - surface)).si();
    return heat_in - (evaporation_heat(surface) * (both * (saturated(surface) - incoming))).si();
  };
  const Temperature coldest = moist_air::dew_point(intake) - 30 * kelvin;  // well below any wet bulb
  const Temperature surface =
      Temperature::celsius(numerics::root_between(surplus, coldest.celsius(), oven_air.celsius(), 1e-6));
  const Mass water = load.area * film * (1000 * kilogram_per_cubic_metre);
  return {.surface = surface, .water = water, .time = water / (both * (saturated(surface) - incoming))};
}

}  // namespace dampward::drying
