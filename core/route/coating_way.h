#pragma once

#include <string>

#include "core/equipment/kind.h"
#include "core/quantity/quantity.h"
#include "core/quantity/range.h"

namespace dampward::route {

// Hands-on time of one way of coating a unit, from opening it to closing it again.
struct WayLabour {
  Range<Duration> strip, mask, coat, unmask, reassemble;
  bool estimated = false;  // worked out from the kind's other way, not given for this one
  Range<Duration> total() const;
};

struct WayMeans {
  bool can_spray = true;  // a gun and somebody who may use it
  bool can_brush = true;
};

struct WayChoice {
  equipment::CoatingWay way = equipment::CoatingWay::brush_assembled;
  bool possible = true;    // false: the shop can do neither
  WayLabour spray, brush;  // both, so that the choice can be seen
  double reach = 0;        // share of the stripped unit's surface that a brush reaches on the assembled one
  std::string reason;
};

// The kind's usual way is kept, unless its labour is more than `usual_way_patience` times that of the other. A brush is
// chosen against the usual spray only where it reaches `least_reach` of the surface; spray is never chosen on labour alone
// against a stated reason to brush, because that reason may be one of harm.
inline constexpr double usual_way_patience = 1.5;  // estimate
inline constexpr double least_reach = 0.4;         // estimate

WayChoice choose_way(const equipment::Kind& kind, WayMeans means);

}  // namespace dampward::route
