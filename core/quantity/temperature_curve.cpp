#include "core/quantity/temperature_curve.h"

#include <algorithm>

#include "core/base/promise.h"

namespace dampward {

TemperatureCurve::TemperatureCurve(std::vector<Point> points) : points_(std::move(points)) {
  DAMPWARD_PROMISE(!points_.empty(), "a temperature curve has at least one point");
  DAMPWARD_PROMISE(std::is_sorted(points_.begin(), points_.end(),
                                  [](const Point& a, const Point& b) { return a.time < b.time; }),
                   "the points of a temperature curve stand in order of time");
}

Temperature TemperatureCurve::at(Duration time) const {
  DAMPWARD_PROMISE(!points_.empty(), "a temperature curve is asked only when it has points");
  const auto after = std::upper_bound(points_.begin(), points_.end(), time,
                                      [](Duration t, const Point& point) { return t < point.time; });
  if (after == points_.begin()) return points_.front().temperature;
  if (after == points_.end()) return points_.back().temperature;
  const Point& a = *std::prev(after);
  const Point& b = *after;
  return a.temperature + (time - a.time) / (b.time - a.time) * (b.temperature - a.temperature);
}

Temperature TemperatureCurve::peak() const {
  DAMPWARD_PROMISE(!points_.empty(), "a temperature curve is asked only when it has points");
  return std::max_element(points_.begin(), points_.end(),
                          [](const Point& a, const Point& b) { return a.temperature < b.temperature; })
      ->temperature;
}

}  // namespace dampward
