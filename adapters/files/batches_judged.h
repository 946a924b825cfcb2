#pragma once

#include "core/referee/batches.h"
#include "core/solver/batches.h"

namespace dampward::files {

// What the referee says of a plan of batches, and what it costs; the problem is told to it in its own words, and nothing of the
// solver's is used.
referee::BatchVerdict judged(const solver::BatchProblem& problem, const solver::BatchPlan& plan);

}  // namespace dampward::files
