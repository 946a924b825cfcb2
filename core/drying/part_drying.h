#pragma once

#include <optional>

#include "core/drying/oven_piece.h"
#include "core/quantity/shares.h"
#include "core/quantity/temperature.h"

namespace dampward::drying {

// Which figure of the ranges is meant.
enum class Side {
  typical,
  safe,   // the slow one: nineteen parts in twenty are quicker
  quick,  // the other one: nineteen in twenty are slower; the safe side for water that goes back
};

// How fast water leaves the body at this temperature, as the diffusivity a body of typical thickness would
// have.
//   typical  D(T)
//   safe     D(T) · exp(−√(ln²(D/D_low) + ln²(effect of E_low or E_high at T) + ln²((L_high/L)²)))
//   quick    the same upwards: D_high, the other ends of E and L_low
// Taking each end of a range as the one-in-twenty value of an independent log-normal factor, the safe figure
// is the one-in-twenty value of the drying. That the ends are such values is an estimate.
Diffusivity effective_diffusivity(const DryingBody& body, Temperature at, Side side);

// Water in a part over its dry mass, where its isotherm is known.
struct Sorption {
  MoistureContent start;  // at rest with the air it comes from
  MoistureContent floor;  // at rest with the oven's air: no time in this oven brings it lower
  MoistureContent after;  // after the bake, on the side of the residual given
};

// How long at one temperature until the rule is met.
Duration time_to_dry(const DryingBody& body, Temperature at, Side side);

}  // namespace dampward::drying
