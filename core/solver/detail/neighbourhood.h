#pragma once

#include <cstdint>
#include <functional>
#include <vector>

#include "core/solver/detail/kernel.h"
#include "core/solver/detail/random.h"
#include "core/solver/problem.h"

namespace dampward::solver::detail {

// Betters a plan piece by piece (large neighbourhood search, Shaw 1998): operations of a stretch of time, or of whole blocks that
// hang together, are freed, all others keep their order on the resources (a partial order schedule, Policella et al. 2004), and the kernel looks for a shorter plan.
// The stretch grows while pieces are searched through and shrinks while they are not.
class Neighbourhood {
 public:
  Neighbourhood(const Problem& problem, const Starts& earliest, std::uint64_t seed);

  // Tries pieces until so much more work is done, or the question says no, or the plan is as good as `good_enough`. True: the
  // plan got better.
  bool run(Starts& starts, std::int64_t work, const std::function<bool()>& keep_going, int good_enough);
  std::int64_t work() const { return work_; }

 private:
  bool try_piece(Starts& starts, const std::function<bool()>& keep_going);
  void free_stretch(const Starts& starts);
  void free_blocks();
  void keep_order(const Starts& starts, Problem& piece) const;

  const Problem& problem_;
  const Starts& earliest_;
  BlockDistances distances_;
  Blocks blocks_;
  Random random_;
  std::vector<char> free_;
  double share_ = 0.2;  // of the operations, freed at a time
  std::int64_t work_ = 0;
};

}  // namespace dampward::solver::detail
