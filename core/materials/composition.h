#pragma once

#include <span>
#include <vector>

#include "core/base/result.h"
#include "core/materials/liquid.h"

namespace dampward::materials {

// Whether the typical shares of a recipe add to 100 % ± 1, each range is ordered and every solvent is in the table.
// An empty recipe (composition unknown) passes. `owner` is named in the problems: "lacquer varnish".
Problems faults_of_composition(std::span<const SolventPart> parts, std::span<const Solvent> solvents,
                               const std::string& owner);

// nullptr: not in the table.
const Solvent* find_solvent(std::span<const Solvent> solvents, const SolventId& id);

// Density of the volatile part, its solvents' volumes adding up (ideal mixing): 1/ρ = Σ wᵢ/ρᵢ.
// The range takes each share as typical and returns exact; unknown composition or density: the lightest to the heaviest
// of the table with the middle between, so that nothing unknown passes for known. Promise: the table is not empty.
Range<Density> volatile_density(std::span<const SolventPart> parts, std::span<const Solvent> solvents);

}  // namespace dampward::materials
