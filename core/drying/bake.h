#pragma once

#include <optional>
#include <span>
#include <string>
#include <variant>
#include <vector>

#include "core/drying/no_bake.h"
#include "core/drying/oven_piece.h"
#include "core/drying/part_drying.h"
#include "core/drying/set_point.h"
#include "core/drying/wall.h"
#include "core/moist_air/humid_air.h"
#include "core/quantity/temperature_curve.h"
#include "core/shop/shop.h"

namespace dampward::drying {

enum class Dryness {
  dry,          // meets its target
  damp_inside,  // its surface is dry, its inside not; nobody waited for it
  unknown,      // its target cannot be reckoned; `unknown` of its part says why
};

// What the bake does to one part.
struct PartBake {
  KindId kind;
  PartId part;
  std::string name;
  Temperature peak;  // at the oven's worst place, thermostat at its highest, lit by the lamps
  Temperature limit;
  TemperatureStep margin;  // limit − peak; never under the margin the limit asks for
  equipment::DryTarget target = equipment::DryTarget::surface;
  bool asked = true;
  Dryness dryness = Dryness::dry;
  std::optional<double> residual;          // share of the removable moisture left, on the safe side
  std::optional<double> residual_nominal;  // with typical figures
  std::optional<Sorption> moisture;        // with the safe-side residual, where the isotherm is known
  Duration needs, needs_nominal;           // hold this part asks for; zero where it is not waited for
  std::string words;  // what stays wet, or why nobody knows; empty where it is simply dry
};

// How the units of one kind warm, for the warm window afterwards. Typical figures, power on at 0.
struct PieceBake {
  KindId kind;
  int count = 0;
  TemperatureCurve whole, heavy;  // to the end of the hold; `heavy` is `whole` where nothing is heavier
  Range<Duration> whole_cooling, heavy_cooling;  // time constants in still room air
};

struct BakePlan {
  Temperature set;
  SetPointBound bound = SetPointBound::part;
  OvenExcess excess;
  KindId weakest_kind;  // holder of the part that allows least
  PartId weakest_part;
  Duration plateau;              // surfaces wet, at the wet bulb
  Duration warm_up;              // then until the slowest node at the coldest place is within 2 K
  Duration hold;                 // counted from there: 95 % over the ranges, see below
  Duration hold_nominal;         // the same with typical figures
  std::optional<Duration> rule;  // the trade's rule, where it says anything
  KindId slowest_kind;           // of the part that sets the hold; empty where nothing asks for any
  PartId slowest_part;
  std::vector<PartBake> parts;
  std::vector<PieceBake> pieces;
  Mass water;                      // surface water driven off, safe side
  Mass inside_water;               // out of parts, typical figures
  Energy energy;                   // typical figures
  RelativeHumidity oven_humidity;  // of fresh air brought to the set point, where the oven's air ends
  RelativeHumidity dampest;        // of the oven's air once the surfaces are dry

  Duration in_oven() const { return plateau + warm_up + hold; }
};

using BakeAnswer = std::variant<BakePlan, NoBake>;

// The bake of one load in one oven with the shop's air: the highest set point, then the times (`load_run.h`). The cost
// grows with kinds and parts, not with counts: a millisecond or two a kind. The hold is the time that nineteen parts in
// twenty meet, over the ranges of diffusivity, activation energy and thickness (see `effective_diffusivity`), at the
// oven's coldest place, with the slowest warming and the most water on surfaces and in seams. The order of the load
// changes nothing. Heat is not credited with killing anything.
// Promise: the load is not empty and counts are above zero.
BakeAnswer bake_load(const shop::Oven& oven, const Wall& wall, std::span<const LoadUnits> load,
                     const moist_air::HumidAir& shop_air, const DryRules& rules = {});

}  // namespace dampward::drying
