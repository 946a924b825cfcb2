#pragma once

#include <array>

#include "core/equipment/kind.h"

namespace dampward::drying {

using equipment::Shape;

// The series of `diffusion.h` as a set of decaying modes: what is left of an even start is Σ weight · exp(−rate Fo).
// Sixteen terms, and one more for all the rest, whose rate is that of the short-time law where the rest begins. The
// weights add up to 1. Against the full series: within 2e-6 from Fo 0.01 on, within 0.01 at any time.
struct Mode {
  double weight = 0, rate = 0;
};
using Modes = std::array<Mode, 17>;

// For the water in the whole body, or (`layer` below 1, plates only) in the outermost part of it: that share of the
// path from the surface inwards.
//   plate   8/((2n+1)²π²δ) (1 − (−1)ⁿ sin((2n+1) π (1 − δ)/2)),  rate (2n+1)²π²/4     the profile of [Crank1975]
//           eq. 4.17 averaged over the layer δ; δ = 1 is eq. 4.18
// Promise: the shape is one of the three, 0 < layer ≤ 1, and only a plate has a layer.
Modes modes(Shape shape, double layer = 1);

}  // namespace dampward::drying
