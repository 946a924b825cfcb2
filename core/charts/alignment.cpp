#include "core/charts/alignment.h"

#include <algorithm>
#include <cmath>

#include "core/base/promise.h"

namespace dampward::charts {

Upright filling(double x, const Frame& frame, double low, double high) {
  DAMPWARD_PROMISE(low < high, "an upright runs from a lower amount to a higher one");
  const double modulus = frame.height / (high - low);
  return {x, frame.foot() + modulus * low, modulus};
}

Place on_one_ruler(const Upright& first, const Upright& second, double a, double b, double c) {
  const double alpha = a / first.modulus, beta = b / second.modulus, both = alpha + beta;
  DAMPWARD_PROMISE(both != 0, "a ruler between two scales meets a third somewhere");
  return {first.x + (second.x - first.x) * beta / both, (alpha * first.foot + beta * second.foot - c) / both};
}

Misreading misreading_at(const Alignment& chart, double on_first, double on_second, double off) {
  Misreading worst;
  const auto exact = chart.read(on_first, on_second);
  if (!exact) return worst;
  for (const double one : {-off, off}) {
    for (const double two : {-off, off}) {
      const Place a = chart.first.beside(on_first, one), b = chart.second.beside(on_second, two);
      const auto crossed = chart.answer.crossed_by(a, b);
      if (!crossed) continue;
      for (const double three : {-off, off}) {
        const double read = chart.answer.across_from(chart.answer.beside(*crossed, three), *crossed);
        worst.most = std::max(worst.most, std::abs(read - *exact));
        worst.share = std::max(worst.share, std::abs(read / *exact - 1));
      }
    }
  }
  return worst;
}

Misreading worst_misreading(const Alignment& chart, const std::function<bool(double, double)>& counts,
                            double off) {
  constexpr int steps = 40;
  const auto figure = [](const Scale& scale, int i) {
    return scale.low() + (scale.high() - scale.low()) * (i + 0.5) / steps;
  };
  Misreading worst;
  for (int i = 0; i < steps; ++i) {
    for (int j = 0; j < steps; ++j) {
      const double one = figure(chart.first, i), two = figure(chart.second, j);
      if (counts && !counts(one, two)) continue;
      const Misreading here = misreading_at(chart, one, two, off);
      worst.most = std::max(worst.most, here.most);
      worst.share = std::max(worst.share, here.share);
    }
  }
  return worst;
}

}  // namespace dampward::charts
