#pragma once

#include "core/quantity/shares.h"
#include "core/quantity/temperature.h"

namespace dampward::moist_air {

// Salts a unit may carry: sea spray and hand sweat (sodium and magnesium chloride), the rest from soil, flux, fertiliser.
enum class Salt {
  lithium_chloride,
  magnesium_chloride,
  sodium_chloride,
  potassium_chloride,
  potassium_nitrate,
  potassium_sulphate,
};

// Relative humidity over the salt's saturated solution: in damper air the dry salt draws water and turns to brine.
//   RH % = A exp(B/T)    T in K, good to ±2 % of the value
// Source: CRC Handbook, "Constant humidity solutions" (A. Wexler); constants and ranges read there. Calcium chloride is
// left out: its constant is printed to two digits and does not give the printed humidity back.
// Holds over the printed range (sodium chloride 10 to 40 °C, magnesium chloride 5 to 45 °C); outside, the value at the
// nearer end. For sodium chloride that stays within 1 point of Wexler and Hasegawa 1954 from 0 to 50 °C (74.7 to 75.6 %).
RelativeHumidity deliquescence(Salt salt, Temperature temperature);

}  // namespace dampward::moist_air
