#pragma once

#include "core/solver/problem.h"

namespace dampward::solver {

// The last operation cannot start earlier: the longest path, and for each resource the energy that must be spent on it between
// the earliest moment at which some operations can begin and the time that must follow all of them (Carlier and Latapie 1991 for
// the idea of heads and tails). The arcs hold no positive cycle, whose earliest starts are handed in.
int quick_lower_bound(const Problem& problem, const Starts& earliest);

}  // namespace dampward::solver
