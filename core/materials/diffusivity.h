#pragma once

#include "core/materials/material.h"
#include "core/quantity/range.h"
#include "core/quantity/temperature.h"

namespace dampward::materials {

// How fast water moves through the material at this temperature.
//   D(T) = D(T₀) · exp(−E/R · (1/T − 1/T₀)), T in K, R = 8.314462618 J/(mol K)   (Arrhenius)
// The range takes diffusivity and activation energy each at whichever end makes the result lowest or highest, so it widens
// with the distance from T₀.
Range<Diffusivity> diffusivity(const MoistureDiffusion& diffusion, Temperature temperature);

// What to take where nobody measured it: 30..43..50 kJ/mol, an estimate. Moulded epoxy gave 30.2 (two diffusivities, 20 and
// 85 °C) and 38.8 to 47.5 (published bake times at 40 to 150 °C); the trade's rule of three hours at 71 °C and one more for
// each 10 °F lower behaves like 24 to 50. Weigh a piece at two temperatures to settle it.
Figure<MolarEnergy> unmeasured_activation_energy();

}  // namespace dampward::materials
