#pragma once

#include <span>
#include <string>
#include <vector>

#include "core/base/id.h"
#include "core/equipment/kind.h"
#include "core/materials/liquid.h"
#include "core/materials/material.h"
#include "core/quantity/quantity.h"
#include "core/quantity/range.h"

namespace dampward::route {

// One soil and what takes it off.
struct CleanerChoice {
  std::string soil;
  std::string cleaner;  // id; empty: by dry brush and vacuum, or nothing in the shop serves
  std::string name;
  bool dry = false;                    // no liquid is needed
  bool found = true;                   // false: nothing the shop has takes this soil off
  bool spray_area = false;             // flash point at or above 38 °C: may be used in the spray area
  std::vector<std::string> keep_off;   // names of parts it attacks: covered, and wiped round by hand
  std::vector<std::string> try_first;  // names of parts it may soften: a drop on a stray piece tells
  std::string reason;
  Range<Duration> dries_in;  // standing until free of it
};

// The soils of a unit: those written down, and those its findings imply (mould means fungus).
std::vector<std::string> soils_of(std::span<const std::string> soils, std::span<const std::string> findings);

// For each soil the cleaner that harms no part; of those, one that may be used in the spray area; of those, the one good for
// most of the soils. Chlorinated solvents are never chosen; nor is a cleaner with nothing known of it. Where every fitting cleaner harms some part, the one that harms
// fewest is used by hand wipe with those parts covered. `out` are parts no longer in the unit.
std::vector<CleanerChoice> choose_cleaners(std::span<const std::string> soils, const equipment::Kind& kind,
                                           std::span<const PartId> out,
                                           std::span<const materials::Liquid> cleaners,
                                           std::span<const materials::Material> materials,
                                           std::span<const materials::Solvent> solvents);

}  // namespace dampward::route
