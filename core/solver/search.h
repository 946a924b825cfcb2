#pragma once

#include <cstdint>
#include <functional>
#include <limits>
#include <optional>
#include <span>
#include <vector>

#include "core/base/result.h"
#include "core/solver/conflict.h"
#include "core/solver/problem.h"

namespace dampward::solver {

enum class Status {
  optimal,     // no plan is shorter
  feasible,    // a plan, and how much shorter one could be at best
  infeasible,  // proved: there is none
  unknown,     // neither a plan nor a proof so far
};

// Runs all tasks and returns when all are done, in turn or side by side.
using Executor = std::function<void(std::span<const std::function<void()>>)>;

struct SearchOptions {
  // Steps of the search, about 25 ns each on a processor of 2020. The same problem, seed and limit give the same outcome on any
  // machine, whatever the executor; for that, keep_going must not say no.
  std::int64_t work = std::numeric_limits<std::int64_t>::max();
  std::uint64_t seed = 1;
  // Asked often, from every task; false ends the search with what there is. Empty: never.
  std::function<bool()> keep_going;
  // Two tasks at a time. Empty: in turn.
  Executor executor;
  // Told of each better plan and bound.
  std::function<void(const Starts& starts, int lower_bound)> on_progress;
};

struct Outcome {
  Status status = Status::unknown;
  Starts starts;                     // of the best plan; empty: none was found
  int lower_bound = 0;               // the last operation cannot start earlier
  std::optional<Conflict> conflict;  // where infeasible
  std::int64_t work = 0;             // done
};

// Problems: those of faults(problem). Two searches take turns or run side by side, and trade plan and bound at set amounts of work:
// one breeds plans and betters them piece by piece, the other searches completely, from above and from below.
Result<Outcome> solve(const Problem& problem, const SearchOptions& options = {});

}  // namespace dampward::solver
