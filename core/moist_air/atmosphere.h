#pragma once

#include "core/quantity/quantity.h"

namespace dampward::moist_air {

inline constexpr Pressure sea_level_pressure = 101325 * pascal;

// Pressure of the standard atmosphere:  p = 101325 (1 − 2.25577e-5 z)^5.2559   z in m.
// Source: ASHRAE Handbook Fundamentals 2017 ch. 1 eq. 3 (from memory; meets its printed table within 1 Pa, tests/moist_air).
// Holds from -5000 to 11000 m; beyond, the value at the nearer end. Weather moves the true pressure by about 3 %.
Pressure standard_pressure(Length altitude);

}  // namespace dampward::moist_air
