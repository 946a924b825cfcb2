#pragma once

#include <functional>

#include "core/base/result.h"
#include "core/line/answer.h"
#include "core/line/problem.h"

namespace dampward::line {

struct PlanOptions {
  // Asked now and then; false ends the planning, and what has no place yet is given as unplaced. Empty: never stop.
  std::function<bool()> keep_going;
};

// A timetable that keeps every rule of the problem, units with near due minutes first. The same problem gives the same
// answer, in whatever order its units and operations are listed. What finds no place is named with what is in the way;
// late is an answer, unsafe never. Problems: names nobody knows or used twice, negative lengths, spans out of order.
Result<Answer> plan(const Problem& problem, const PlanOptions& options = {});

// What is wrong with a problem as written; empty: nothing.
Problems faults(const Problem& problem);

}  // namespace dampward::line
