#pragma once

#include "core/quantity/quantity.h"
#include "core/quantity/shares.h"
#include "core/quantity/temperature.h"

namespace dampward::room_air {

// Vapour as an ideal gas: a share of the air by volume is the same share by amount, so n = p V / (R T).
// Source: gas law; R = 8.314462618 J/(mol K), CODATA 2018. Good to about 1 % for solvent vapours at shop temperature.

struct AirState {
  Temperature temperature = Temperature::celsius(25);
  Pressure pressure = 101325 * pascal;
};

// Mass of vapour in a volume of air: 1 ppm of molar mass 40 is 1.635 mg/m³ at 25 °C and sea level.
Density mass_in_air(VapourShare share, MolarMass molar_mass, AirState air = {});
VapourShare share_in_air(Density mass, MolarMass molar_mass, AirState air = {});

// Room that an evaporated mass or liquid takes as pure vapour.
Volume vapour_volume(Mass evaporated, MolarMass molar_mass, AirState air = {});
Volume vapour_volume(Volume liquid, Density density, MolarMass molar_mass, AirState air = {});

}  // namespace dampward::room_air
