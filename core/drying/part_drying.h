#pragma once

#include <optional>

#include "core/drying/oven_piece.h"
#include "core/moist_air/humid_air.h"
#include "core/quantity/shares.h"
#include "core/quantity/temperature_curve.h"

namespace dampward::drying {

// Which figure of the ranges is meant.
enum class Side {
  typical,
  safe,  // the slow one: nineteen parts in twenty are quicker
};

// How fast water leaves the body at this temperature, as the diffusivity a body of typical thickness would
// have.
//   typical  D(T)
//   safe     D(T) · exp(−√(ln²(D/D_low) + ln²(effect of E_low or E_high at T) + ln²((L_high/L)²)))
// Taking each end of a range as the one-in-twenty value of an independent log-normal factor, the safe figure
// is the one-in-twenty value of the drying. That the ends are such values is an estimate.
Diffusivity effective_diffusivity(const DryingBody& body, Temperature at, Side side);

// ∫ D dt along a part's own temperature: with it the series for constant D hold exactly, as long as the part
// is warm all through (Crank 1975 sect. 7.1, from memory). Three Gauss points on each straight piece of the
// curve.
Area diffused(const DryingBody& body, const TemperatureCurve& curve, Side side);

// How far a body has come once the load is warm, and how fast it goes on at that temperature.
struct Progress {
  Area diffused;     // ∫ D dt so far
  Diffusivity rate;  // D from then on
};
Progress progress_after(const DryingBody& body, const TemperatureCurve& warm_up, Side side);

// Time from there until the body meets the rule it was made with; zero where the warming was enough.
Duration hold_needed(const DryingBody& body, const Progress& progress);

// Share of removable moisture left this long after.
double residual_after(const DryingBody& body, const Progress& progress, Duration hold);

// Water in a part over its dry mass, where its isotherm is known.
struct Sorption {
  MoistureContent start;  // at rest with the air it comes from
  MoistureContent floor;  // at rest with the oven's air: no time in this oven brings it lower
  MoistureContent after;  // after the bake, on the side of the residual given
};

// A part that came from drier air than the oven's has nothing removable: it stays as it is, and is not
// reckoned wetter.
std::optional<Sorption> sorption_after(const DryingBody& body, const moist_air::HumidAir& from,
                                       const moist_air::HumidAir& oven, double residual);

// How long at one temperature until the rule is met.
Duration time_to_dry(const DryingBody& body, Temperature at, Side side);

}  // namespace dampward::drying
