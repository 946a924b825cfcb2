#pragma once

#include <vector>

#include "core/quantity/temperature.h"

namespace dampward {

// A temperature over time: straight lines between points, level before the first and after the last.
class TemperatureCurve {
 public:
  struct Point {
    Duration time;
    Temperature temperature;
  };

  TemperatureCurve() = default;
  // Promise: at least one point, times never falling.
  explicit TemperatureCurve(std::vector<Point> points);

  Temperature at(Duration time) const;
  Temperature peak() const;
  const std::vector<Point>& points() const { return points_; }

 private:
  std::vector<Point> points_;
};

}  // namespace dampward
