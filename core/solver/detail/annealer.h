#pragma once

#include <cstdint>
#include <functional>

#include "core/solver/detail/batch_state.h"
#include "core/solver/detail/random.h"

namespace dampward::solver::detail {

// Simulated annealing (Kirkpatrick, Gelatt and Vecchi 1983) over random moves.
class Annealer {
 public:
  Annealer(const BatchProblem& problem, std::uint64_t seed) : state_(problem), random_(seed) {}

  // Goes on from there.
  void load(const BatchPlan& plan);
  // So many moves at one temperature, in units of cost. `keep_going`, if any, is asked every 1024 moves.
  void run(std::int64_t moves, double temperature, const std::function<bool()>& keep_going);

  bool found() const { return found_; }
  std::int64_t best_cost() const { return best_cost_; }  // where found
  const BatchPlan& best() const { return best_; }        // all jobs with a place
  const BatchState& state() const { return state_; }

 private:
  void remember();

  BatchState state_;
  Random random_;
  BatchPlan best_;
  std::int64_t best_cost_ = 0;
  bool found_ = false;
};

}  // namespace dampward::solver::detail
