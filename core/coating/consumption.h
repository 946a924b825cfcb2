#pragma once

#include <optional>

#include "core/coating/film.h"
#include "core/materials/liquid.h"
#include "core/quantity/range.h"

namespace dampward::coating {

// How the lacquer goes on.
struct Application {
  materials::Method method = materials::Method::brush;
  Range<TransferEfficiency> efficiency;  // share of the solids that lands on the work
};
// A brush loses little: 85 to 95 % (handbook memory).
inline constexpr Range<TransferEfficiency> brush_efficiency{TransferEfficiency::fraction(0.85),
                                                            TransferEfficiency::fraction(0.90),
                                                            TransferEfficiency::fraction(0.95)};

// What coating one unit takes, from the film it shall carry. Low and high bound it; have the high figure ready.
struct Consumption {
  int coats = 0;
  Range<Length> film;                // dry, in all
  Range<Length> dry_coat, wet_coat;  // of one coat; a comb pressed into the wet film reads the second
  Range<VolumeShare> solids;         // share of the mix that stays as film, thinner counted
  Range<Volume> ready;               // as it goes into the gun or on the brush
  Range<Volume> lacquer;             // of that, as supplied
  Range<Volume> thinner;
  Range<Volume> solvent;  // all of it becomes vapour, landed or not
};

double thinner_parts(const materials::Lacquer& lacquer, materials::Method method);
const materials::CoatRule* coat_rule(const materials::Lacquer& lacquer, materials::Method method);

// The dry film that so much mix builds on an area: V · TE · VS / A, the same balance as `litres` read backwards. Low goes with the
// largest area, the poorest solids and efficiency. Promise: an area above zero.
Range<Length> film_from(Volume ready, Range<Area> area, Range<VolumeShare> solids,
                        Range<TransferEfficiency> efficiency);

// `solvent` is the density of the lacquer's volatile part (materials/composition.h). None: the lacquer is not meant for the
// method. Promise: efficiencies above zero, a lacquer with solids.
std::optional<Consumption> consumption(Range<Area> area, const materials::Lacquer& lacquer,
                                       Range<Density> solvent, const Application& application);

}  // namespace dampward::coating
