#pragma once

#include <span>
#include <string>
#include <vector>

#include "core/base/id.h"
#include "core/equipment/kind.h"
#include "core/materials/material.h"
#include "core/route/solvent_conflict.h"

namespace dampward::route {

// One line of a list in a worker's hand: a part, what is done to it, and why.
struct ListedPart {
  PartId part;
  std::string name;
  double count = 1;
  std::string what;
  std::string why;
};

// What the parts of a kind ask for, as lists for later sheets.
struct Worklists {
  std::vector<ListedPart> removed;  // out before heat and solvent
  std::vector<ListedPart> mask;
  std::vector<ListedPart> tighten;   // before coating
  std::vector<ListedPart> loosen;    // so that both sides are reached
  std::vector<ListedPart> touch_up;  // after unmasking
  std::vector<ListedPart> brush;     // coated by brush even where the rest is sprayed
  std::vector<ListedPart> bare;      // neither coated nor masked

  bool is_removed(const PartId& part) const;
};

// Cells come out always; so do parts the kind or their material says to take out, shields, and, where the shop so chooses,
// valves. A part of a material the lacquer's own list names is masked, whatever the kind says.
Worklists worklists(const equipment::Kind& kind, std::span<const materials::Material> materials,
                    equipment::ValveChoice valves, std::span<const SolventConflict> conflicts);

// The lines of a list as words: "fuse clips (2): contacts".
std::vector<std::string> lines_of(const std::vector<ListedPart>& list);

// Both views of the valves, with what each costs, in two sentences; empty where the kind has none.
std::string valve_views(const equipment::Kind& kind, equipment::ValveChoice chosen);

}  // namespace dampward::route
