#pragma once

#include <string>
#include <vector>

#include "core/line/planner.h"

namespace dampward::line::detail {

// All units, as a plan should take them up: those of `wanted` in that order, the others where their urgency puts them; whatever is
// begun goes before the rest, for its windows are running.
std::vector<std::string> order_of(const Problem& problem, const std::vector<std::string>& wanted);

// Looks for an order of units whose plan is better: one unit at a time changes its place or two swap theirs, and what is no worse
// stands (after the first-improvement walks of Hoos and Stützle, 2005, from memory). Ends when options.effort operations have been
// placed. `best` is the plan of `order` to begin with. Promise: no faults.
Answer better_order(const Problem& problem, const PlanOptions& options, Answer best);

}  // namespace dampward::line::detail
