#pragma once

#include <cstdint>
#include <functional>
#include <optional>

#include "core/base/result.h"
#include "core/solver/batches.h"
#include "core/solver/search.h"

namespace dampward::solver {

struct BatchSearchOptions {
  // Steps of the search, about 25 ns each on a processor of 2020. The same problem, seed and limit give the same outcome on any
  // machine, whatever the executor, if keep_going never says no and share_used is empty.
  std::int64_t work = 400'000'000;
  std::uint64_t seed = 1;
  // Which share of the time that there is has been used, asked now and then; the search ends at 1. The search cools by it, or by
  // the share of `work` where that is greater. Empty: by work alone.
  std::function<double()> share_used;
  // Asked often, from every task; false ends the search with what there is. Empty: never.
  std::function<bool()> keep_going;
  // Two tasks at a time. Empty: in turn.
  Executor executor;
  // Told of each better plan; of the first one before there is a bound, with 0.
  std::function<void(std::int64_t cost, std::int64_t lower_bound)> on_progress;
};

struct BatchOutcome {
  Status status =
      Status::unknown;  // never infeasible: what no plan can hold, and can be told, is a fault of the problem
  BatchPlan plan;       // the best; empty: none was found
  BatchCost cost;       // of it
  BatchCost lower_bound;             // of each term for itself
  std::int64_t objective = 0;        // weighted cost
  std::int64_t least_objective = 0;  // no plan costs less
  std::int64_t work = 0;             // done
};

// Problems: those of faults(problem). Two searches from the same first plan, each by its own chances, cool down side by side; the
// better plan is warmed up again by both, twice. The bound comes after the first plan, takes up to a second, and counts as no work.
Result<BatchOutcome> solve(const BatchProblem& problem, const BatchSearchOptions& options = {});

}  // namespace dampward::solver
