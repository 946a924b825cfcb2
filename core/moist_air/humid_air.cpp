#include "core/moist_air/humid_air.h"

#include <algorithm>

#include "core/moist_air/saturation.h"

namespace dampward::moist_air {
namespace {

constexpr double vapour_over_air = 0.621945;     // molar mass of water over that of dry air
constexpr double gas_constant_air = 287.042;     // J/(kg K)
constexpr double gas_constant_vapour = 461.526;  // J/(kg K)

HumidityRatio ratio_of(Pressure vapour, Pressure total) {
  return HumidityRatio::fraction(vapour_over_air * (vapour / (total - vapour)));
}

// Humidity ratio of air at `temperature` whose wet bulb is `bulb`: ASHRAE Fundamentals 2017 ch. 1 eq. 33 and 35, kJ and °C.
HumidityRatio ratio_from_bulb(Temperature temperature, Temperature bulb, Pressure pressure) {
  const double t = temperature.celsius(), b = bulb.celsius();
  const double saturated = ratio_of(saturation_pressure(bulb), pressure).fraction();
  if (b >= 0) {
    return HumidityRatio::fraction(((2501 - 2.326 * b) * saturated - 1.006 * (t - b)) /
                                   (2501 + 1.86 * t - 4.186 * b));
  }
  return HumidityRatio::fraction(((2830 - 0.24 * b) * saturated - 1.006 * (t - b)) /
                                 (2830 + 1.86 * t - 2.1 * b));
}

}  // namespace

bool in_range(const HumidAir& air) {
  return in_range(air.temperature) && air.humidity.fraction() >= 0 && air.humidity.fraction() <= 1 &&
         vapour_pressure(air) < air.pressure;
}

HumidAir from_vapour_pressure(Temperature temperature, Pressure vapour, Pressure pressure) {
  return {temperature, RelativeHumidity::fraction(vapour / saturation_pressure(temperature)), pressure};
}

HumidAir from_dew_point(Temperature temperature, Temperature dew_point, Pressure pressure) {
  return from_vapour_pressure(temperature, saturation_pressure(dew_point), pressure);
}

HumidAir from_humidity_ratio(Temperature temperature, HumidityRatio ratio, Pressure pressure) {
  const Pressure vapour = pressure * (ratio.fraction() / (vapour_over_air + ratio.fraction()));
  return from_vapour_pressure(temperature, vapour, pressure);
}

HumidAir from_wet_bulb(Temperature temperature, Temperature wet_bulb, Pressure pressure) {
  return from_humidity_ratio(temperature, ratio_from_bulb(temperature, wet_bulb, pressure), pressure);
}

Pressure vapour_pressure(const HumidAir& air) {
  return air.humidity.fraction() * saturation_pressure(air.temperature);
}

Temperature dew_point(const HumidAir& air) {
  return saturation_temperature(vapour_pressure(air));
}

HumidityRatio humidity_ratio(const HumidAir& air) {
  return ratio_of(vapour_pressure(air), air.pressure);
}

Temperature wet_bulb(const HumidAir& air) {
  const double wanted = humidity_ratio(air).fraction();
  double low = std::min(dew_point(air), air.temperature).kelvins();
  // Air hotter than the boiling point has its wet bulb below that point, where saturated air is all vapour.
  double high = std::min(air.temperature, saturation_temperature(air.pressure) - 1e-6 * kelvin).kelvins();
  while (high - low > 1e-9) {
    const double middle = 0.5 * (low + high);
    if (!(middle > low && middle < high)) break;
    const bool too_wet =
        ratio_from_bulb(air.temperature, Temperature::kelvins(middle), air.pressure).fraction() > wanted;
    (too_wet ? high : low) = middle;
  }
  return Temperature::kelvins(high);
}

SpecificEnergy enthalpy(const HumidAir& air) {
  const double t = air.temperature.celsius();
  return SpecificEnergy::si(1006 * t + humidity_ratio(air).fraction() * (2'501'000 + 1860 * t));
}

SpecificVolume specific_volume(const HumidAir& air) {
  return SpecificVolume::si(gas_constant_air * air.temperature.kelvins() *
                            (1 + 1.607858 * humidity_ratio(air).fraction()) / air.pressure.in(pascal));
}

Density density(const HumidAir& air) {
  return (1 + humidity_ratio(air).fraction()) / specific_volume(air);
}

Density vapour_density(const HumidAir& air) {
  return Density::si(vapour_pressure(air).in(pascal) / (gas_constant_vapour * air.temperature.kelvins()));
}

HumidAir brought_to(const HumidAir& air, Temperature temperature) {
  return from_vapour_pressure(temperature, vapour_pressure(air), air.pressure);
}

}  // namespace dampward::moist_air
