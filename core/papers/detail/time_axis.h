#pragma once

#include <vector>

#include "core/base/civil_time.h"

namespace dampward::papers {

// Days side by side, each as wide as its hours; the nights between them narrow, so that what runs through them still shows.
class TimeAxis {
 public:
  struct Day {
    Instant from, to;
  };
  // Promise: days in order, apart from each other, at least one.
  TimeAxis(std::vector<Day> days, double left, double right);

  double at(Instant time) const;  // held between both ends
  double left() const { return left_; }
  bool shows(Instant from, Instant to) const { return from < days_.back().to && to > days_.front().from; }
  const std::vector<Day>& days() const { return days_; }
  double per_hour() const { return per_second_ * 3600; }

  static constexpr double night = 3;

 private:
  std::vector<Day> days_;
  double left_, per_second_ = 0;
};

}  // namespace dampward::papers
