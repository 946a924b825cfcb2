#pragma once

#include <optional>

#include "core/materials/material.h"
#include "core/quantity/shares.h"
#include "core/quantity/temperature.h"

namespace dampward::materials {

// Water a material holds once it is at rest with the air around it, over its dry mass.
//
// wood: Hailwood-Horrobin with two hydrates, T in °F, h = humidity as a fraction
//   M = 1800/W · ( K h/(1 − K h) + (K1 K h + 2 K1 K2 K² h²)/(1 + K1 K h + K1 K2 K² h²) )  in %
//   W  = 330  + 0.452 T    + 0.00415 T²       K  = 0.791 + 4.63e-4 T − 8.44e-7 T²
//   K1 = 6.34 + 7.75e-4 T  − 9.35e-5 T²       K2 = 1.09  + 2.84e-2 T − 9.04e-5 T²
//   Source: Simpson, FPL-RN-0268 (1998); Wood Handbook, FPL-GTR-190 (2010) eq. 4-5. Key MAT_WOODE. Holds −1 to 132 °C.
//   Public copies often feed °C into this set; the metric set (W = 349 + 1.29 T …) differs from it by rounding only.
// paper: M = (ln(1 − h)/(1.67 T − 285.655))^(1/(2.491 − 0.012 T)), T in °C, M in kg/kg
//   Source: Paltakari and Karlsson, as used in paper-lifetime studies. Key MAT_PAPE. One public copy says T in K, which turns
//   the quotient negative: a misprint. The range of the fit is not stated; taken as 0 to 100 °C.
// bleached fibre: GAB, M = m C K h/((1 − K h)(1 − K h + C K h)), T in K
//   C = 0.4273 exp(468.9266/(R T)), K = 0.1011 exp(297.7358/(R T)), m = 0.0578 kg/kg, R = 0.4615 kJ/(kg K)
//   Source: constants of Tryding et al. 2022 for the data of Leuk et al. 2016. Key MAT_TRYD. Fitted at 25 and 80 °C; taken
//   as 20 to 90 °C.
//
// Nothing for `none`, outside those temperatures, and for a humidity below 0 or above 1. Humidity above 98 % counts as 98 %:
// beyond it water fills the pores and no isotherm holds.
// The three are no more than stand-ins for one another; docs/theory/sorption.md says how far they part.
std::optional<MoistureContent> equilibrium_moisture(Isotherm isotherm, Temperature temperature,
                                                    RelativeHumidity humidity);

}  // namespace dampward::materials
