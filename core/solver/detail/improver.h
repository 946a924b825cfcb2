#pragma once

#include <cstdint>
#include <functional>

#include "core/solver/detail/neighbourhood.h"
#include "core/solver/detail/population.h"
#include "core/solver/problem.h"

namespace dampward::solver::detail {

// Finds plans and betters them, proving nothing: breeding and pieces in turns.
class Improver {
 public:
  Improver(const Problem& problem, const Starts& earliest, std::uint64_t seed);

  void run(std::int64_t work, const std::function<bool()>& keep_going, int lower_bound);
  void join(const Starts& starts);
  // The best plan known here, or empty.
  const Starts& best() const { return best_; }
  std::int64_t work() const { return population_.work() + neighbourhood_.work(); }

 private:
  void take(const Starts& starts) {
    if (best_.empty() || starts.back() < best_.back()) best_ = starts;
  }

  Population population_;
  Neighbourhood neighbourhood_;
  Starts best_;
};

}  // namespace dampward::solver::detail
