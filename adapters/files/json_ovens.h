#pragma once

#include <string>

#include "core/solver/batch_search.h"

namespace dampward::files {

// What came of an oven scheduling problem, as one JSON document; docs/cli.md names every key.
std::string ovens_json(const solver::BatchProblem& problem, const solver::BatchOutcome& outcome,
                       double seconds);

}  // namespace dampward::files
