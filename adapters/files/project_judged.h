#pragma once

#include <vector>

#include "core/referee/judge.h"
#include "core/solver/problem.h"

namespace dampward::files {

// What the referee finds broken in a plan; the problem is told to it in its own words, and nothing of the solver's is used.
std::vector<referee::Violation> judged(const solver::Problem& problem, const solver::Starts& starts);

}  // namespace dampward::files
