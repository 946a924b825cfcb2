#pragma once

#include <string>

#include "core/materials/liquid.h"
#include "core/quantity/quantity.h"
#include "core/quantity/range.h"
#include "core/quantity/shares.h"

namespace dampward::coating {

// The least non-volatile share by mass a varnish should hold when ready. Source: USAF TO 1-1-700 par. 6.4 (read).
inline constexpr MassShare published_least_solids = MassShare::fraction(0.50);
// Two parts of lacquer to one of thinner for the gun. Common practice, no source.
inline constexpr double trade_thinner_parts = 0.5;

// Non-volatile by mass after adding `thinner_parts` by volume to one part of lacquer:
//   NV = ws ρ_lacquer / (ρ_lacquer + r ρ_thinner)
Range<MassShare> non_volatile(Range<MassShare> solids, Range<Density> lacquer, Range<Density> thinner,
                              double thinner_parts);

// Most thinner by mass, per mass of lacquer, that keeps `least` non-volatile: ws / least − 1. Negative: there is less even unthinned.
double most_thinner_by_mass(MassShare solids, MassShare least);
// The same by volume, never below 0.
double most_thinner_parts(MassShare solids, Density lacquer, Density thinner, MassShare least);

// What the published minimum and the mix in hand say of each other. Neither is dropped: the mix is judged by viscosity and
// by the film it builds.
struct ThinningViews {
  double thinner_parts = 0;       // of the mix in hand
  Range<MassShare> non_volatile;  // of the mix in hand
  MassShare published_least;
  double parts_within_published = 0;  // most thinner parts that keep it at typical solids; 0: none does
  bool disagree = false;              // the mix in hand may fall below the minimum
  std::string view;                   // both in one sentence
};
ThinningViews thinning_views(const materials::Lacquer& lacquer, Range<Density> thinner, double thinner_parts);

// How much of each makes so much mix, volumes adding up.
struct Mix {
  Volume lacquer, thinner;
};
Mix mix_for(Volume ready, double thinner_parts);

}  // namespace dampward::coating
