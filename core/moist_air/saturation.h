#pragma once

#include "core/quantity/quantity.h"
#include "core/quantity/temperature.h"

namespace dampward::moist_air {

// Where the saturation formulas hold.
inline constexpr Temperature coldest = Temperature::celsius(-100);
inline constexpr Temperature hottest = Temperature::celsius(200);

bool in_range(Temperature temperature);

// Vapour pressure of pure water in balance with liquid, or with ice at and below 273.16 K.
//   ice    ln p = C1/T + C2 + C3 T + C4 T² + C5 T³ + C6 T⁴ + C7 ln T
//   water  ln p = C8/T + C9 + C10 T + C11 T² + C12 T³ + C13 ln T        T in K, p in Pa
// Source: Hyland and Wexler 1983 as printed in ASHRAE Handbook Fundamentals 2017 ch. 1 eq. 5 and 6. Coefficients from
// memory; they meet the handbook's printed table from -60 to 150 °C within 0.03 % (tests/moist_air).
// Holds from -100 to 200 °C. Outside: the value at the nearer end, so that no input makes infinity.
Pressure saturation_pressure(Temperature temperature);

// The temperature at which this vapour pressure saturates: dew point, or frost point at and below 273.16 K.
// The inverse of the above, exact to 1e-9 K. Pressures beyond the range give its nearer end; so does zero.
Temperature saturation_temperature(Pressure vapour);

}  // namespace dampward::moist_air
