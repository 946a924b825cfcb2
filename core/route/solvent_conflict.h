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
  std::string agent;  // the family, or the material it is said to attack
  std::string why;    // one sentence
  bool named =
      false;  // the liquid's own list names the material: mask it or take it out. Else only a solvent family in
              // common: a wet coat may soften it, a drop on a stray piece tells
};

// How the liquid may harm the material.
struct Attack {
  bool named = false;
  std::vector<std::string>
      agents;  // the name on the liquid's list, or the families in common; empty: no attack known
};
Attack attack_on(const materials::Material& material, const SolventContact& contact);

// Parts the kind would spray or brush although something in the liquid attacks their material. A part of several plausible
// materials counts as the one attacked worst; a material no table knows counts as attacked by any solvent.
std::vector<SolventConflict> solvent_conflicts(const equipment::Kind& kind,
                                               std::span<const materials::Material> materials,
                                               const SolventContact& contact);

}  // namespace dampward::route
