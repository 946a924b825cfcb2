#pragma once

#include <cstdint>
#include <functional>
#include <vector>

#include "core/solver/problem.h"

namespace dampward::solver {

// Arcs and resources, by index, that no plan can keep together.
struct Conflict {
  std::vector<int> arcs, resources;
  // Proven: without any one of them there is a plan that keeps the others. Where not, the work was used up before.
  bool minimal = false;
};

// Of a problem known to be infeasible. Members are dropped in ever smaller groups for as long as what is left is refuted; each
// trial may take `work_of_each`, all together `work`; `keep_going` may end it early.
Conflict least_conflict(const Problem& problem, std::int64_t work, std::int64_t work_of_each,
                        const std::function<bool()>& keep_going);

}  // namespace dampward::solver
