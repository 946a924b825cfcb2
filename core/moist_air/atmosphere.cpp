#include "core/moist_air/atmosphere.h"

#include <algorithm>
#include <cmath>

namespace dampward::moist_air {

Pressure standard_pressure(Length altitude) {
  const double z = std::clamp(altitude.in(metre), -5000.0, 11000.0);
  return sea_level_pressure * std::pow(1 - 2.25577e-5 * z, 5.2559);
}

}  // namespace dampward::moist_air
