#pragma once

#include <vector>

#include "core/charts/scale.h"

namespace dampward::charts {

enum class TickKind { named, half, small };

struct Tick {
  double figure = 0;
  TickKind kind = TickKind::small;
};

// Which figures a scale is marked at, rising: named ones at least `apart` mm from each other, and between two of them even steps of 1, 2 or
// 5 of some power of ten, `small` mm apart or more, so that an eye may count them. Steps grow where the scale is crowded.
std::vector<Tick> ticks_of(const Scale& scale, double apart = 7, double small = 1.2);

}  // namespace dampward::charts
