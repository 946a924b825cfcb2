#pragma once

#include <optional>
#include <span>

#include "core/quantity/quantity.h"
#include "core/quantity/shares.h"
#include "core/quantity/temperature.h"
#include "core/room_air/mixture.h"
#include "core/room_air/vapour.h"

namespace dampward::room_air {

// A combustible of a vapour mix: its share of the mix by amount (any unit, they are normalised), and its own limit in air.
struct Combustible {
  double amount = 0;
  VapourShare limit;
};

// Flammable limit of the mix: L = 1 / Σ (yᵢ/Lᵢ), for the lower limit as for the upper.
// Source: Le Chatelier 1891, as in Crowl and Louvar, Chemical Process Safety (example checked). Promise: some combustible.
VapourShare le_chatelier(std::span<const Combustible> mix);

// A lower limit measured at 25 °C, in air of another temperature: L₂₅ (1 − 0.000784 (T − 25)); below 25 °C it is left as it is.
// Source: NFPA 86 rule 0.000436 per °F (from memory); the modified Burgess-Wheeler rule (Zabetakis 1965) gives 0.000721. The
// faster fall is taken. Holds to about 120 °C.
VapourShare at_temperature(VapourShare limit_at_25, Temperature air);

// The vapour of a liquid that has evaporated whole, which is what a room gets in the end. The vapour over a pot is another mix,
// richer in what leaves first.
struct EvaporatedMix {
  Volume vapour_per_kilogram;  // pure vapour from a kilogram of the volatile part
  VapourShare lower_limit;     // of the mix, at the air's temperature
  MolarMass mean_molar_mass;
};
// None: nothing in it burns (water only).
std::optional<EvaporatedMix> evaporated(const Mixture& mixture, AirState air = {});

}  // namespace dampward::room_air
