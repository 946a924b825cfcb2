#pragma once

#include <cstdint>
#include <functional>

#include "core/solver/detail/kernel.h"
#include "core/solver/problem.h"

namespace dampward::solver::detail {

// The complete search of the whole problem: in two turns of three for a shorter plan than the best, else against the least time not refuted yet
// (destructive improvement, Klein and Scholl 1999). Clauses learned in one serve the other.
class Prover {
 public:
  Prover(const Problem& problem, const Starts& earliest);

  void run(std::int64_t work, const std::function<bool()>& keep_going, int lower_bound);
  // A plan from elsewhere: only shorter ones are looked for from now on.
  void join(const Starts& starts);
  // The best plan found here, or empty.
  const Starts& best() const { return best_; }
  // Proven: there is no plan shorter than the best known one, or none at all where none is known.
  bool exhausted() const { return exhausted_; }
  int least_last() const { return kernel_.least_last(); }
  std::int64_t work() const { return kernel_.work(); }

 private:
  Kernel kernel_;
  Starts best_;
  bool exhausted_ = false;
  int turns_ = 0;
};

}  // namespace dampward::solver::detail
