#pragma once

#include <optional>
#include <random>

#include "core/solver/problem.h"

namespace dampward::solver::test {

// A random problem small enough for every start of every operation to be tried: a source, a few operations, a sink.
inline Problem tiny(std::uint32_t seed) {
  std::mt19937 random(seed);
  const auto between = [&](int low, int high) {
    return low + static_cast<int>(random() % static_cast<unsigned>(high - low + 1));
  };
  Problem problem;
  const int count = between(2, 5), resources = between(1, 2);
  for (int r = 0; r < resources; ++r) problem.capacities.push_back(between(1, 3));
  problem.operations.resize(count + 2);
  for (int i = 1; i <= count; ++i) {
    Operation& op = problem.operations[i];
    op.duration = between(0, 3);
    for (int r = 0; r < resources; ++r) {
      const int amount = between(0, problem.capacities[r]);
      if (amount > 0) op.demands.push_back({r, amount});
    }
    problem.arcs.push_back({0, i, 0});
    problem.arcs.push_back({i, count + 1, op.duration});
  }
  for (int k = between(0, 2 * count); k > 0; --k) {
    const int from = between(1, count), to = between(1, count);
    if (from == to) continue;
    // Mostly shortest gaps forwards and longest gaps backwards; now and then a ring that nothing can keep.
    const int lag = from < to ? between(-1, 3) : between(-4, between(0, 9) == 0 ? 1 : -1);
    problem.arcs.push_back({from, to, lag});
  }
  return problem;
}

// The least start of the last operation, by trying every start up to the time by which some best plan must be done: a plain
// time-step model. None: no plan.
class TimeStepModel {
 public:
  explicit TimeStepModel(const Problem& problem)
      : problem_(problem), horizon_(horizon(problem)), starts_(problem.operations.size(), 0) {
    taken_.assign(problem.capacities.size(), std::vector<int>(static_cast<std::size_t>(horizon_) * 2 + 4, 0));
    place(1);
  }
  std::optional<int> best() const { return best_; }

 private:
  // A start that some arc rules out for good ends the branch; all others are looked at.
  bool arcs_kept(int placed) const {
    for (const Arc& arc : problem_.arcs) {
      if (arc.from < placed && arc.to < placed && starts_[arc.to] < starts_[arc.from] + arc.lag) return false;
    }
    return true;
  }
  void place(int operation) {
    if (!arcs_kept(operation)) return;
    if (operation == problem_.size()) {
      if (!best_ || starts_.back() < *best_) best_ = starts_.back();
      return;
    }
    const Operation& op = problem_.operations[operation];
    for (int start = 0; start <= horizon_; ++start) {
      starts_[operation] = start;
      bool fits = true;
      for (const Demand& demand : op.demands) {
        for (int t = start; t < start + op.duration; ++t) {
          taken_[demand.resource][t] += demand.amount;
          fits = fits && taken_[demand.resource][t] <= problem_.capacities[demand.resource];
        }
      }
      if (fits) place(operation + 1);
      for (const Demand& demand : op.demands) {
        for (int t = start; t < start + op.duration; ++t) taken_[demand.resource][t] -= demand.amount;
      }
    }
  }

  const Problem& problem_;
  int horizon_;
  Starts starts_;
  std::vector<std::vector<int>> taken_;
  std::optional<int> best_;
};

}  // namespace dampward::solver::test
