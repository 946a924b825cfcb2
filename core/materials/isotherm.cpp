#include "core/materials/isotherm.h"

#include <algorithm>
#include <cmath>

namespace dampward::materials {
namespace {

constexpr double top_humidity = 0.98;

MoistureContent wood(Temperature temperature, double h) {
  const double t = temperature.fahrenheit();
  const double w = 330 + 0.452 * t + 0.00415 * t * t;
  const double k = 0.791 + 4.63e-4 * t - 8.44e-7 * t * t;
  const double k1 = 6.34 + 7.75e-4 * t - 9.35e-5 * t * t;
  const double k2 = 1.09 + 2.84e-2 * t - 9.04e-5 * t * t;
  const double kh = k * h;
  const double dissolved = kh / (1 - kh);
  const double hydrated = (k1 * kh + 2 * k1 * k2 * kh * kh) / (1 + k1 * kh + k1 * k2 * kh * kh);
  return MoistureContent::percent(1800 / w * (dissolved + hydrated));
}

MoistureContent paper(Temperature temperature, double h) {
  const double t = temperature.celsius();
  return MoistureContent::fraction(std::pow(std::log(1 - h) / (1.67 * t - 285.655), 1 / (2.491 - 0.012 * t)));
}

MoistureContent bleached_fibre(Temperature temperature, double h) {
  const double rt = 0.4615 * temperature.kelvins();  // kJ/kg
  const double c = 0.4273 * std::exp(468.9266 / rt);
  const double kh = 0.1011 * std::exp(297.7358 / rt) * h;
  return MoistureContent::fraction(0.0578 * c * kh / ((1 - kh) * (1 - kh + c * kh)));
}

bool within(Temperature temperature, double lowest_c, double highest_c) {
  return temperature >= Temperature::celsius(lowest_c) && temperature <= Temperature::celsius(highest_c);
}

}  // namespace

std::optional<MoistureContent> equilibrium_moisture(Isotherm isotherm, Temperature temperature,
                                                    RelativeHumidity humidity) {
  if (!(humidity.fraction() >= 0 && humidity.fraction() <= 1)) return std::nullopt;
  const double h = std::min(humidity.fraction(), top_humidity);
  switch (isotherm) {
    case Isotherm::none:
      return std::nullopt;
    case Isotherm::wood:
      return within(temperature, -1.1, 132.2) ? std::optional(wood(temperature, h)) : std::nullopt;
    case Isotherm::paper:
      return within(temperature, 0, 100) ? std::optional(paper(temperature, h)) : std::nullopt;
    case Isotherm::bleached_fibre:
      return within(temperature, 20, 90) ? std::optional(bleached_fibre(temperature, h)) : std::nullopt;
  }
  return std::nullopt;
}

}  // namespace dampward::materials
