#pragma once

#include <cstdint>
#include <functional>
#include <vector>

#include "core/solver/detail/kernel.h"
#include "core/solver/detail/profile.h"
#include "core/solver/detail/random.h"
#include "core/solver/problem.h"
#include "core/solver/temporal.h"

namespace dampward::solver::detail {

// A first plan where longest gaps defeat the decoder: each block of operations that hang together is planned by itself, glued, and
// put as a whole where it first fits beside the blocks before it. Blocks only wait for each other, so there always is such a
// place: a plan is found wherever each block's own plan is. The best of many orders of blocks is taken.
class BlockBuilder {
 public:
  // No faults, no positive cycle.
  BlockBuilder(const Problem& problem, std::uint64_t seed);

  // `work`: for each block. Empty: some block's plan was not found, or it has none.
  Starts build(std::int64_t work, const std::function<bool()>& keep_going);
  std::int64_t work() const { return work_; }

 private:
  bool plan_alone(const std::vector<int>& members, std::int64_t work,
                  const std::function<bool()>& keep_going);
  Starts glue(const std::vector<int>& keys);
  void put(const std::vector<int>& members, Starts& starts);

  const Problem& problem_;
  Blocks blocks_;
  std::vector<std::vector<Arc>> waits_;  // arcs that end in the block, from earlier ones
  Profile profile_;
  Random random_;
  Starts alone_;  // of each operation in its block's own plan
  std::int64_t work_ = 0;
};

}  // namespace dampward::solver::detail
