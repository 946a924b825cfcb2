#include "core/solver/detail/profile.h"

#include <algorithm>

namespace dampward::solver::detail {

Profile::Profile(const Problem& problem)
    : problem_(problem), resources_(static_cast<int>(problem.capacities.size())) {
  clear();
}

void Profile::clear() {
  times_.assign(1, 0);
  taken_.assign(resources_, 0);
}

int Profile::step_at(int time) const {
  return static_cast<int>(std::upper_bound(times_.begin(), times_.end(), time) - times_.begin()) - 1;
}

int Profile::begin_step(int time) {
  const int step = step_at(time);
  if (times_[step] == time) return step;
  times_.insert(times_.begin() + step + 1, time);
  const std::size_t old = taken_.size();
  taken_.resize(old + resources_);
  const auto from = taken_.begin() + step * resources_;
  std::copy_backward(from, taken_.begin() + static_cast<std::ptrdiff_t>(old), taken_.end());
  return step + 1;
}

void Profile::add(int operation, int start, int sign) {
  const Operation& op = problem_.operations[operation];
  if (op.duration == 0 || op.demands.empty()) return;
  const int first = begin_step(start), last = begin_step(start + op.duration);
  for (int step = first; step < last; ++step) {
    for (const Demand& demand : op.demands)
      taken_[step * resources_ + demand.resource] += sign * demand.amount;
  }
}

int Profile::earliest_fit(int operation, int from) const {
  const Operation& op = problem_.operations[operation];
  if (op.duration == 0 || op.demands.empty()) return from;
  const int steps = static_cast<int>(times_.size());
  int start = from;
  for (int step = step_at(from); step < steps && times_[step] < start + op.duration; ++step) {
    for (const Demand& demand : op.demands) {
      const int taken = taken_[step * resources_ + demand.resource];
      if (taken + demand.amount <= problem_.capacities[demand.resource]) continue;
      // The last step is free, so there is a next one.
      start = times_[step + 1];
      break;
    }
  }
  return start;
}

}  // namespace dampward::solver::detail
