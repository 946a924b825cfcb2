#pragma once

#include <functional>
#include <optional>
#include <vector>

#include "core/drying/oven_piece.h"
#include "core/drying/part_drying.h"
#include "core/moist_air/humid_air.h"

namespace dampward::drying {

// So much of the water that the bake drove out may be back in a slow part when its last coat has flashed off. An estimate: as
// much again as the hold may leave in a porous part.
inline constexpr double regain_allowed = 0.10;

// Water on its way back into a part that left the oven dry: the share of what was driven out that is inside again.
class Regain {
 public:
  struct Point {
    Duration after;
    double share = 0;
  };

  // Promise: at least one point, times and shares never falling.
  explicit Regain(std::vector<Point> points);

  double at(Duration after) const;                     // level after the last point
  std::optional<Duration> passes(double share) const;  // when it first does; none: not as far as was reckoned
  Regain counted_from(Duration later) const;           // the same course, time zero so much later

 private:
  std::vector<Point> points_;
};

// Where a part stands after the bake: its own temperature over time, in air that holds so much vapour.
struct AfterBake {
  std::function<Temperature(Duration)> part;
  Pressure vapour;
  Duration until;  // how far to reckon
};

// The part starts evenly at `floor` of `sorption` and its surface is at rest with the air at every moment, at the part's own
// temperature: a warm part stands in relatively drier air. Water moves in at the quick end of every range, and neither the
// air's film nor lacquer on the part holds it back: all on the safe side. Without a known isotherm (`sorption` none) the surface
// counts as wet as before the bake from the first moment.
// Source: superposition of Crank's series, see `sorbing_body.h`; time-lag only, no film resistance.
// Promise: `until` above zero.
Regain regain(const DryingBody& body, const std::optional<Sorption>& sorption, const AfterBake& after);

}  // namespace dampward::drying
