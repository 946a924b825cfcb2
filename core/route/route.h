#pragma once

#include <optional>
#include <span>
#include <string>
#include <variant>
#include <vector>

#include "core/equipment/kind.h"
#include "core/hazards/hazard.h"
#include "core/materials/liquid.h"
#include "core/materials/material.h"
#include "core/quantity/temperature.h"
#include "core/route/cleaning.h"
#include "core/route/coating_way.h"
#include "core/route/solvent_conflict.h"
#include "core/route/step.h"
#include "core/route/worklists.h"
#include "core/shop/shop.h"

namespace dampward::route {

// The unit in hand.
struct Subject {
  const equipment::Kind& kind;
  std::vector<std::string> findings;
  std::vector<std::string> soils;
};

// What the shop has and what is known of it.
struct Means {
  const shop::Shop& shop;
  const materials::Lacquer& lacquer;
  const materials::Liquid* thinner = nullptr;
  std::span<const materials::Liquid> cleaners;
  std::span<const materials::Material> materials;
  std::span<const materials::Solvent> solvents;
  std::span<const hazards::Hazard> hazards;
};

// A bake, as worked out for the load the unit goes into.
struct Heat {
  Temperature set_point;
  Temperature hottest_place;  // where tape may sit: set point, swing, evenness and lamps together
  Range<Duration> hold;       // from the door closing until the first unit may leave
  std::optional<Temperature> stepped_to = {};  // where the oven is held after the bake; none: units leave hot
};

// Drying without an oven's heat, and why.
struct NoHeat {
  std::string reason;
  std::string means;  // "desiccant box", "warm cabinet at 40 °C"
  Range<Duration> time;
};

// Minutes after leaving the oven between which the unit may meet lacquer; the end is the end of the last flash.
struct WarmWindow {
  Duration opens;
  std::optional<Duration> closes;  // none: never
};

// What other rooms have worked out for this unit, as plain values.
struct RouteFacts {
  int version = 1;  // counts up when the steps themselves change, not when times move
  std::variant<Heat, NoHeat> drying;
  std::optional<WarmWindow> window;  // none: left open, to be set in the gaps of kind warm_window
};

// When the masks go on. Both ways are worked out, so that a lead can see what rated tape would save.
struct MaskTiming {
  bool all_before_bake = false;
  Range<Duration> before, after;  // hands-on minutes before the bake, and after it, inside the window
};

struct Refusal {
  std::string reason;
  std::string settle;  // what would open the way
};

struct Route {
  int version = 1;
  KindId kind;
  std::optional<Refusal> refused;  // then there are no steps
  WayChoice way;
  std::vector<Step> steps;    // in order
  std::vector<StepGap> gaps;  // every precedence between steps, with its kind and times
  Worklists lists;
  std::vector<SolventConflict> conflicts;
  std::vector<CleanerChoice> cleaning;
  MaskTiming masking, masking_otherwise;
  std::string masking_reason;  // why the one and what the other would cost or save
  std::string valves;          // both views, and the one chosen; empty where the kind has none
};

// The steps this unit needs in this shop, each with its reason. Minutes come from the kind's labour; where it has none an
// estimate stands in and is marked so. A unit holding a part that must be isolated is refused whole.
Route make_route(const Subject& subject, const Means& means, const RouteFacts& facts);

// The part of a route that does not depend on heat: what is taken out, masked, and so on. For whoever works out the drying.
Worklists worklists(const Subject& subject, const Means& means);

// Whether the unit must wait for a licensed hand: some part carries a hazard that may not be heated, opened or coated.
std::optional<Refusal> isolation(const equipment::Kind& kind, std::span<const hazards::Hazard> hazards);

}  // namespace dampward::route
