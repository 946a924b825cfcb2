#include "core/moist_air/saturation.h"

#include <algorithm>
#include <cmath>

namespace dampward::moist_air {
namespace {

constexpr double triple_point = 273.16;  // K

struct LogPressure {
  double value;  // ln(p/Pa)
  double slope;  // per K
};

LogPressure over_ice(double t) {
  constexpr double c1 = -5.6745359e3, c2 = 6.3925247, c3 = -9.677843e-3, c4 = 6.2215701e-7, c5 = 2.0747825e-9,
                   c6 = -9.484024e-13, c7 = 4.1635019;
  return {c1 / t + c2 + t * (c3 + t * (c4 + t * (c5 + t * c6))) + c7 * std::log(t),
          -c1 / (t * t) + c3 + t * (2 * c4 + t * (3 * c5 + t * 4 * c6)) + c7 / t};
}

LogPressure over_water(double t) {
  constexpr double c8 = -5.8002206e3, c9 = 1.3914993, c10 = -4.8640239e-2, c11 = 4.1764768e-5,
                   c12 = -1.4452093e-8, c13 = 6.5459673;
  return {c8 / t + c9 + t * (c10 + t * (c11 + t * c12)) + c13 * std::log(t),
          -c8 / (t * t) + c10 + t * (2 * c11 + t * 3 * c12) + c13 / t};
}

double kelvins_in_range(Temperature temperature) {
  return std::clamp(temperature.kelvins(), coldest.kelvins(), hottest.kelvins());
}

}  // namespace

bool in_range(Temperature temperature) {
  return temperature >= coldest && temperature <= hottest;
}

Pressure saturation_pressure(Temperature temperature) {
  const double t = kelvins_in_range(temperature);
  return std::exp((t <= triple_point ? over_ice(t) : over_water(t)).value) * pascal;
}

Temperature saturation_temperature(Pressure vapour) {
  if (!(vapour > saturation_pressure(coldest))) return coldest;
  if (vapour >= saturation_pressure(hottest)) return hottest;
  const double wanted = std::log(vapour.in(pascal));
  static const double wanted_at_triple_point = over_ice(triple_point).value;
  const auto form = wanted <= wanted_at_triple_point ? over_ice : over_water;
  // Newton from the Magnus form (WMO) turned round; ln p over T is smooth and bends one way, so a few steps do.
  const double magnus = wanted - std::log(611.2);
  double t = 273.15 + 243.12 * magnus / (17.62 - magnus);
  for (int step = 0; step < 20; ++step) {
    const LogPressure here = form(t);
    const double change = (wanted - here.value) / here.slope;
    t += change;
    if (std::abs(change) < 1e-10) break;
  }
  return Temperature::kelvins(t);
}

}  // namespace dampward::moist_air
