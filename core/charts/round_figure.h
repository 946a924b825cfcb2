#pragma once

#include <cmath>

namespace dampward::charts {

// The nearest figure of 1, 2 or 5 times a power of ten at or above this one. Promise: above zero.
inline double round_above(double figure) {
  const double ten = std::pow(10, std::floor(std::log10(figure)));
  for (const double step : {1.0, 2.0, 5.0}) {
    if (step * ten >= figure * (1 - 1e-9)) return step * ten;
  }
  return 10 * ten;
}

// The same at or below.
inline double round_below(double figure) {
  const double ten = std::pow(10, std::floor(std::log10(figure * (1 + 1e-9))));
  for (const double step : {5.0, 2.0}) {
    if (step * ten <= figure * (1 + 1e-9)) return step * ten;
  }
  return ten;
}

}  // namespace dampward::charts
