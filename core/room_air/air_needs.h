#pragma once

#include <optional>

#include "core/room_air/capacity.h"
#include "core/room_air/flammability.h"
#include "core/room_air/mixture.h"

namespace dampward::room_air {

// Fresh air for a steady release. The two differ by one to two orders: air that is enough against fire is never thereby enough
// for people.
struct AirNeeds {
  VolumeFlow fire;  // holds the place's share of the lower flammable limit
  std::optional<VolumeFlow>
      people;  // holds Σ C/L at 1, no respirator; none: some part has no limit, no air is known to be enough
};

// `volatiles` is what evaporates, lacquer's and thinner's, landed or not. Each need takes the recipe at its own worst: pass the
// mixture worst for fire and the one worst for people.
AirNeeds air_needs(MassFlow volatiles, const Mixture& worst_for_fire, const Mixture& worst_for_people,
                   FireShare share, double mixing, AirState air = {});

}  // namespace dampward::room_air
