#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/materials/liquid.h"
#include "core/quantity/quantity.h"
#include "core/quantity/shares.h"
#include "core/room_air/exposure_limit.h"

namespace dampward::room_air {

// One solvent of a liquid, with every figure the air needs. Where the table has none, the worst of the table stands in.
struct VolatilePart {
  SolventId solvent;
  std::string name;
  MassShare share;  // of the volatile part
  MolarMass molar_mass;
  VapourShare lower_limit;                 // flammable, 25 °C, the lowest published
  std::optional<RulingLimit> limit;        // for people, eight hours
  std::optional<RulingLimit> short_limit;  // for people, fifteen minutes, or a ceiling
  std::optional<VapourShare> danger_to_life;
  bool assumed = false;  // some figure stands in
};

// The volatile part of a liquid as it may turn out at its worst. Water is left out; its share is not shared among the others.
struct Mixture {
  std::vector<VolatilePart> parts;
  bool composition_known = true;  // false: unknown, taken as the worst solvent of the table alone
  bool people_known = true;       // false: for some part no authority gives a limit
};

// Which harm to look for the worst of, within the ranges of a recipe.
enum class Worst { fire, people };

// Shares within their ranges that add to 1 and make the mixture worst: vapour over lower limit per mass for fire, vapour over
// exposure limit per mass for people. Both are sums over the solvents, so filling the harmful ones first is exact.
// An empty recipe is the worst single solvent of `plausible` (solvents with a molar mass). Parts that are not in the table count
// as that worst solvent too. Promise: `plausible` holds a solvent with molar mass and lower limit.
Mixture worst_mixture(std::span<const materials::SolventPart> recipe,
                      std::span<const materials::Solvent> plausible, Worst worst,
                      const std::string& authority = "");

// Lacquer and thinner together, each by the mass of its volatile part.
struct VolatileShare {
  Mixture mixture;
  double mass = 0;  // any unit, the same for all
};
Mixture blended(std::span<const VolatileShare> liquids);

}  // namespace dampward::room_air
