#pragma once

#include <cstdint>
#include <vector>

#include "core/solver/batches.h"

namespace dampward::solver::detail {

// Shares of a capacity, at most 1 in all for jobs of one batch, after a dual feasible function: 1 above 1 - 1/k, 0 below 1/k, the
// share itself between; for k = 1 just the share.
double weakened_share(std::int64_t size, std::int64_t capacity, int k);

// Jobs that must end late because time is short. Whatever is on time with release and due time inside a stretch of time runs
// inside it, on machines that are open only so long:
//   Σ (min_time_j + setup_j) · size_j ≤ Σ capacity_m · open_m, and Σ (min_time_j + setup_j) · f(size_j / c_j) ≤ Σ open_m;
// setup_j: the least into its family, for which the stretch begins that much earlier; c_j: the largest capacity it may use; f: a
// dual feasible function. The least number of jobs without which it holds is late; summed over stretches apart, over all machines or
// machine by machine. `setups`: setup_j of each family. `late` jobs are those known to be, which are not counted again.
std::int64_t late_for_lack_of_time(const BatchProblem& problem, const std::vector<int>& setups,
                                   const std::vector<bool>& late);

}  // namespace dampward::solver::detail
