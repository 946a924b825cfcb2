#pragma once

#include <cstddef>
#include <optional>
#include <string>

#include "core/quantity/quantity.h"
#include "core/room_air/near_zone.h"

namespace dampward::room_air {

// Solvent that gets loose: laid down evenly from `from` to `to`, part of it gone before it lands, the rest leaving the film, rag or
// puddle at a rate that falls with what is left:
//   dM/dt = laid − k M       so after laying M falls as exp(−k t)
// Source: a first-order loss is the usual model of a drying film or small spill (Keil and Nicas 2003, from memory); k is an estimate from how
// long the film takes to flash off.
struct Release {
  std::string by;                  // who or what it comes from, as reasons name it: a unit's serial
  std::string what;                // "coat", "mixing", "cleaning" …
  std::size_t liquid = 0;          // which of the scene's liquids
  int from = 0, to = 0;            // minutes, from < to
  Mass volatiles;                  // all of it leaves in the end
  double at_once = 0;              // share that is vapour before it lands, 0 to 1
  bool sprays_isocyanate = false;  // mist that no filter may be trusted with
  Duration nine_tenths;  // a film keeps a tenth so long after it was laid; zero: it leaves as it is laid
  std::optional<NearZone> near;  // where the hands are, from `from` to `to`; none: nobody is near it
};

// Share of it that has become vapour by a moment, in minutes of the scene. Never falls; 0 before `from`, nearing 1.
double evaporated_by(const Release& release, double minute);

// The most it gives off a minute over any time: while it is laid, or from the full film. For capacities.
MassFlow strongest(const Release& release);

// From then on less than a thousandth of it is left.
int over_by(const Release& release);

}  // namespace dampward::room_air
