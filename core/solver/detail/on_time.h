#pragma once

#include <cstdint>
#include <functional>
#include <vector>

#include "core/solver/batches.h"

namespace dampward::solver::detail {

// More of these jobs than the answer cannot be on time together. Each machine is planned by itself, minute by minute and batch by
// batch, for the greatest worth of jobs on time; a job is worth 1 less a price, which is raised where several batches or machines
// want it and lowered where none does (Lagrangian relaxation; Held and Karp 1971, Fisher 1981; from memory). Prices and worths
// together bound the number from above, whatever the prices. A batch is filled as if the last job could be cut to fit.
// Where some job takes no time, it says nothing (all of them).
// Ends early where `keep_going`, if any, says no, and looks at nothing where the machines' time is too long to do so in about a second.
std::int64_t most_on_time(const BatchProblem& problem, const std::vector<int>& jobs,
                          const std::function<bool()>& keep_going);

}  // namespace dampward::solver::detail
