#pragma once

#include "core/room_air/flammability.h"
#include "core/room_air/mixture.h"

namespace dampward::room_air {

// Share of the lower flammable limit that an oven's air would reach if work still wet went in: all of its solvent as vapour in the
// closed chamber, at the oven's heat. It explains why wet work never enters; it permits nothing. 0: nothing in it burns.
// Counts on perfect mixing: by the work itself it is richer. Promise: the chamber has a volume.
double wet_in_oven(Mass solvent, const Mixture& mixture, Volume chamber, AirState oven);

}  // namespace dampward::room_air
