#pragma once

#include <span>
#include <string>
#include <vector>

#include "core/base/id.h"
#include "core/equipment/kind.h"
#include "core/materials/liquid.h"
#include "core/materials/material.h"

namespace dampward::route {

// What a liquid brings into contact with the parts.
struct SolventContact {
  std::string name;                   // of the lacquer or cleaner
  std::vector<std::string> families;  // solvent families in it, its thinner's too
  std::vector<std::string> attacks;   // materials and families it is said to attack
  bool known = true;                  // false: some of what is in it is unknown, so it counts as every family
};

SolventContact contact_of(const materials::Lacquer& lacquer, const materials::Liquid* thinner,
                          std::span<const materials::Solvent> solvents);
SolventContact contact_of(const materials::Liquid& cleaner, std::span<const materials::Solvent> solvents);

struct SolventConflict {
  PartId part;
  std::string name;
  MaterialId material;
  std::string agent;    // the family, or the material it is said to attack
  std::string why;      // one sentence
  bool certain = true;  // false: nothing is known of what attacks the material; try a drop on a stray piece
};

// Why the liquid may harm the material; nothing where it does not.
std::vector<std::string> agents_against(const materials::Material& material, const SolventContact& contact);

// Parts the kind would spray or brush although something in the liquid attacks their material.
// A part of several plausible materials is taken as each of them.
std::vector<SolventConflict> solvent_conflicts(const equipment::Kind& kind,
                                               std::span<const materials::Material> materials,
                                               const SolventContact& contact);

}  // namespace dampward::route
