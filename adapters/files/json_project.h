#pragma once

#include <string>
#include <vector>

#include "core/solver/problem.h"
#include "core/solver/search.h"

namespace dampward::files {

// What came of a scheduling problem of the literature, as one JSON document; docs/cli.md names every key.
// `dummies`: the file counts the first and the last operation; else they are left out. `assignments`: one of each operation, or none.
std::string project_json(const solver::Problem& problem, const solver::Outcome& outcome, double seconds,
                         bool dummies = true, const std::vector<int>& assignments = {});

}  // namespace dampward::files
