#pragma once

#include <functional>

#include "core/solver/batches.h"

namespace dampward::solver {

// What no plan can do without, each term for itself. The problem is free of faults.
// Run time: for each family and each length p, at least so many batches are p long or longer:
//   ⌈ Σ f(size_j / c_j) ⌉ over the jobs with min_time_j ≥ p; c_j: the largest capacity job j may use; f a dual feasible function
//   (Σ x ≤ 1 implies Σ f(x) ≤ 1); summed over groups of jobs no two of which can share a batch because of their lengths.
// Set-ups: so many batches of each family, each after the set-up to it that is cheapest (quickest), one of them not after its own
// family unless a machine starts with that.
// Late: jobs that are late even if their batch comes first on the machine that has it done soonest, and those for which time is
// short (detail/late_bound.h, detail/on_time.h). That takes up to a second or so; `keep_going`, if any, may end it early.
// Sources: Fekete and Schepers 2001 (dual feasible functions), Uzsoy 1994 (batches cut from jobs in the order of their lengths);
// from memory.
BatchCost batch_lower_bound(const BatchProblem& problem, const std::function<bool()>& keep_going = {});

}  // namespace dampward::solver
