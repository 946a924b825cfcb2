#include "core/drying/diffusion_modes.h"

#include <cmath>
#include <numbers>

#include "core/base/promise.h"

namespace dampward::drying {
namespace {

using std::numbers::pi;

// The nth zero of the Bessel function J0, n from 1: the first as Abramowitz and Stegun 1964 table 9.5 lists it, the
// others by McMahon's expansion, eq. 9.5.12 (from memory), which is closer than 3e-7 from the second on.
double bessel_zero(int n) {
  if (n == 1) return 2.404825557695773;
  const double b = (n - 0.25) * pi, e = 8 * b;
  return b + 1 / e - 124 / (3 * e * e * e) + 120928 / (15 * std::pow(e, 5)) -
         401743168 / (105 * std::pow(e, 7));
}

Mode mode(Shape shape, int n, double layer) {
  switch (shape) {
    case Shape::plate: {
      const double odd = (2 * n - 1) * pi, sign = n % 2 == 1 ? 1 : -1;
      const double kept = layer == 1 ? 1 : (1 - sign * std::sin(odd * (1 - layer) / 2)) / layer;
      return {8 / (odd * odd) * kept, odd * odd / 4};
    }
    case Shape::cylinder: {
      const double a = bessel_zero(n);
      return {4 / (a * a), a * a};
    }
    case Shape::sphere:
      return {6 / (n * n * pi * pi), n * n * pi * pi};
    case Shape::none:
      break;
  }
  broken_promise("only a body with a shape loses water by diffusion");
}

// Surface over volume, times the path: what the short-time law 2 s √(Fo/π) takes out of a body.
double openness(Shape shape, double layer) {
  return shape == Shape::plate ? 1 / layer : shape == Shape::cylinder ? 2 : 3;
}

}  // namespace

Modes modes(Shape shape, double layer) {
  DAMPWARD_PROMISE(layer > 0 && layer <= 1 && (layer == 1 || shape == Shape::plate),
                   "only a plate is dried to a depth");
  Modes all;
  double rest = 1;
  for (std::size_t i = 0; i + 1 < all.size(); ++i) {
    all[i] = mode(shape, static_cast<int>(i) + 1, layer);
    rest -= all[i].weight;
  }
  const double reached = rest / (2 * openness(shape, layer));
  all.back() = {rest, 1 / std::max(pi * reached * reached, 1e-9)};
  return all;
}

}  // namespace dampward::drying
