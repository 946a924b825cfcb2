#pragma once

#include <string>

#include "core/solver/problem.h"
#include "core/solver/search.h"

namespace dampward::files {

// What came of a scheduling problem of the literature, as one JSON document; docs/cli.md names every key.
std::string project_json(const solver::Problem& problem, const solver::Outcome& outcome, double seconds);

}  // namespace dampward::files
