#pragma once

#include <algorithm>
#include <cmath>

#include "core/base/promise.h"

namespace dampward::numerics {

// Where a continuous function crosses zero between two places at which it has opposite signs (or is zero).
// Inverse quadratic steps where they are trustworthy, halving otherwise, so never slower than about three
// times bisection. `tolerance` is how far from the crossing the answer may lie; below the spacing of doubles
// it stops at that spacing.
// Promise: the signs differ.
// Source: Chandrupatla 1997, Adv. Eng. Software 28:145-149 (method from memory; checked on closed forms in
// tests/numerics).
template <class Function>
double root_between(Function&& f, double a, double b, double tolerance) {
  double fa = f(a), fb = f(b);
  DAMPWARD_PROMISE(!(fa * fb > 0) && !std::isnan(fa) && !std::isnan(fb),
                   "a root lies between the two places given");
  double c = a, fc = fa;
  double step = 0.5;
  while (true) {
    const double best = std::abs(fa) < std::abs(fb) ? a : b;
    const double allowed = 2.5e-16 * std::abs(best) + 0.5 * tolerance;
    if (fa == 0) return a;
    if (fb == 0) return b;
    if (allowed >= 0.5 * std::abs(b - a)) return best;
    step = std::clamp(step, allowed / std::abs(b - a), 1 - allowed / std::abs(b - a));
    const double x = a + step * (b - a), fx = f(x);
    // b keeps the other side of the crossing, c the last place given up.
    if ((fx > 0) == (fa > 0)) {
      c = a, fc = fa;
    } else {
      c = b, fc = fb;
      b = a, fb = fa;
    }
    a = x, fa = fx;
    const double xi = (a - b) / (c - b), phi = (fa - fb) / (fc - fb);
    step = 0.5;
    if (1 - std::sqrt(1 - xi) < phi && phi < std::sqrt(xi)) {
      step = fa / (fb - fa) * fc / (fb - fc) + (c - a) / (b - a) * fa / (fc - fa) * fb / (fc - fb);
    }
  }
}

}  // namespace dampward::numerics
