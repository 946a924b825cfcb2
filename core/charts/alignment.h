#pragma once

#include <optional>

#include "core/charts/scale.h"

namespace dampward::charts {

// An upright line on which an amount u stands at y = foot − modulus · u.
struct Upright {
  double x = 0, foot = 0, modulus = 1;  // mm, mm, mm for each unit of u
  Place at(double u) const { return {x, foot - modulus * u}; }
};
// An upright that fills a frame from its foot to its top. Promise: low below high.
Upright filling(double x, const Frame& frame, double low, double high);

// The place that lies on one ruler with u on the first upright and v on the second whenever  a u + b v = c.
//   x = x₁ + (x₂ − x₁) β/(α + β),  y = (α f₁ + β f₂ − c)/(α + β)  with α = a/m₁, β = b/m₂, f the feet and m the moduli
// Source: similar triangles; the alignment chart of d'Ocagne 1884 (from memory), and a line of algebra in docs/theory/charts.md.
// Promise: α + β is not zero.
Place on_one_ruler(const Upright& first, const Upright& second, double a, double b, double c);

// Three scales and a ruler: two figures are given, the third is read.
struct Alignment {
  Scale first, second, answer;

  // None: the ruler misses the answer's scale.
  std::optional<double> read(double on_first, double on_second) const {
    return answer.crossed_by(first.at(on_first), second.at(on_second));
  }
};

// How near a pencil's point and a ruler's edge are put to a place, and an answer is read: half a millimetre, an estimate for a
// steady hand without a lens. Two people reading the same ten points settle it.
inline constexpr double pencil = 0.5;

// How far a reading may be from what the same figures give exactly.
struct Misreading {
  double most = 0;   // in the answer's unit
  double share = 0;  // of the answer
};
// With both given places and the answer's each off by up to `off` mm along their scales, at its worst.
Misreading misreading_at(const Alignment& chart, double on_first, double on_second, double off = pencil);
// The same at the worst place of the chart (a grid of 40 by 40), where the answer lies within its scale. `counts` leaves pairs out
// that the chart is not for.
Misreading worst_misreading(const Alignment& chart, const std::function<bool(double, double)>& counts = {},
                            double off = pencil);

}  // namespace dampward::charts
