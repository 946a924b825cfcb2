#pragma once

#include <cstdint>
#include <functional>
#include <memory>

#include "core/solver/detail/block_builder.h"
#include "core/solver/detail/neighbourhood.h"
#include "core/solver/detail/population.h"
#include "core/solver/problem.h"

namespace dampward::solver::detail {

// Finds plans and betters them: breeding and pieces in turns, the more of whichever betters them more often. Where breeding finds no plan at all, the first one is glued from
// blocks, or else looked for by a kernel of its own, on another way than the prover's.
class Improver {
 public:
  Improver(const Problem& problem, const Starts& earliest, std::uint64_t seed);

  void run(std::int64_t work, const std::function<bool()>& keep_going, int lower_bound);
  void join(const Starts& starts);
  // The best plan known here, or empty.
  const Starts& best() const { return best_; }
  std::int64_t work() const {
    return population_.work() + neighbourhood_.work() + builder_.work() + (scout_ ? scout_->work() : 0);
  }

 private:
  std::int64_t work_for_breeding(std::int64_t work) const;
  void look_for_first(std::int64_t work, const std::function<bool()>& keep_going);
  void take(const Starts& starts) {
    if (best_.empty() || starts.back() < best_.back()) best_ = starts;
  }

  const Problem& problem_;
  const Starts& earliest_;
  Population population_;
  Neighbourhood neighbourhood_;
  BlockBuilder builder_;
  bool built_ = false;
  std::unique_ptr<Kernel> scout_;
  double bred_ = 1, pieced_ = 1;  // lately bettered by breeding, by pieces
  Starts best_;
};

}  // namespace dampward::solver::detail
