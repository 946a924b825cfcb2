#pragma once

#include <optional>
#include <span>
#include <vector>

#include "core/drying/mixed_load.h"
#include "core/drying/oven_piece.h"
#include "core/drying/part_drying.h"
#include "core/drying/wall.h"
#include "core/moist_air/humid_air.h"
#include "core/quantity/temperature_curve.h"
#include "core/shop/shop.h"

namespace dampward::drying {

// So near its air a node counts as there. An estimate: the swing of a simple thermostat.
inline constexpr TemperatureStep reached_within = 2 * kelvin;

// What a run did to one part.
struct PartRun {
  Duration needs;  // hold after the load is warm until it meets its target; zero where nothing is asked
  std::optional<double> residual;  // share of the removable moisture of what is asked, at the end of the run
  std::optional<Sorption> moisture;
};

// One load taken through one oven.
struct LoadRun {
  Duration plateau;                            // until every unit's surface is free of water
  Duration warm_up;                            // then until the last node is within reach of its air
  Duration hold;                               // then until the last part that is asked meets its target
  std::vector<std::vector<PartRun>> parts;     // by kind, as the load's pieces list them
  std::vector<TemperatureCurve> shell, inner;  // by kind, from power on to the end of the run
  Mass surface_water, inside_water;            // driven off
  RelativeHumidity dampest;                    // the oven's air after the plateau
  Energy energy;

  Duration until_dry() const { return plateau + warm_up + hold; }
};

struct RunSettings {
  Temperature air;  // at the place meant: the set point, or the oven's coldest
  Side side = Side::typical;
  DryRules rules;
  Duration at_least;              // go on until then, that the residuals be those of a longer bake
  Duration at_least_hold;         // a hold no shorter than this
  std::optional<Loss> loss = {};  // none: the highest on the safe side, else the typical one
};

// The heat and water of such a run before its first step, for whoever takes it through another way.
MixedLoad mixed_load(const shop::Oven& oven, const Wall& wall, std::span<const LoadUnits> load,
                     const moist_air::HumidAir& shop_air, const RunSettings& settings);

// Heat and water of a mixed load together (`mixed_load.h`), each part's inside along its own node's temperature with its
// surface at rest with the oven's air, whose vapour comes from films and parts (`sorbing_body.h`). A part's inside counts as
// untouched until every surface in the oven is free of water: until then it may dry or not, and nobody knows.
//   typical  typical figures and loss
//   safe     the wall's highest loss, the most water, the slowest warming and diffusion of the ranges
// Nothing where the load is not warm after two days, or not dry after two years.
// Promise: the load is not empty, and the oven's lamps are without fault.
std::optional<LoadRun> run_load(const shop::Oven& oven, const Wall& wall, std::span<const LoadUnits> load,
                                const moist_air::HumidAir& shop_air, const RunSettings& settings);

}  // namespace dampward::drying
