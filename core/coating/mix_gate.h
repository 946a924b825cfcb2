#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/coating/consumption.h"
#include "core/coating/flow_cup.h"

namespace dampward::coating {

// Viscosity at which a suction or gravity gun breaks lacquer up well, at 25 °C: about 20 to 26 s in a Ford 4 cup. An estimate from
// handbook memory; the gun's own sheet settles it.
inline constexpr Range<KinematicViscosity> spray_viscosity{60 * centistokes, 70 * centistokes,
                                                           85 * centistokes};

// What somebody measured of a mix.
struct Measured {
  const FlowCup* cup = nullptr;
  std::optional<Duration> drain;   // in that cup
  std::optional<Length> wet_coat;  // one coat on a test panel, read with a comb
};

// A mix is judged by these two, not by its non-volatile share, over which the trade and a published minimum disagree. What nobody
// measured is not passed.
struct MixGate {
  enum class Viscosity { not_measured, outside_the_cup, too_thin, fits, too_thick };
  Viscosity viscosity = Viscosity::not_measured;
  std::optional<KinematicViscosity> measured_viscosity;
  enum class Film { not_measured, too_thin, fits };
  Film film = Film::not_measured;
  std::optional<Length> film_built;  // dry, by all coats, at the poorest solids of the range
  std::vector<std::string> words;    // each a sentence
  bool passed() const { return viscosity == Viscosity::fits && film == Film::fits; }
};

// Viscosity is asked of a gun only: for the brush it counts as fitting. The film must reach the wanted film's low end, the
// published floor.
MixGate judge_mix(const Consumption& use, materials::Method method, const Measured& measured);

}  // namespace dampward::coating
