#pragma once

#include <cstdint>
#include <functional>

#include "core/base/result.h"
#include "core/line/answer.h"
#include "core/line/problem.h"

namespace dampward::line {

struct PlanOptions {
  // Asked now and then; false ends the planning, and what has no place yet is given as unplaced. Empty: never stop.
  std::function<bool()> keep_going;
  // Operations placed in looking for a better plan than the first, in other orders of the units. The same effort and seed give the
  // same plan on every machine. Nought: the first plan.
  std::int64_t effort = 0;
  std::uint64_t seed = 1;
  // A plan that some already work by: units take their places in its order, and nothing starts sooner than it does there unless
  // nothing else will do, so that what has not changed since stays where it was. Units that it does not name go where their urgency
  // puts them. It must outlive the call. Null: all by urgency.
  const Answer* earlier = nullptr;
};

// A timetable that keeps every rule of the problem, units with near due minutes first; then, with effort, the
// best of the orders tried (objective.h says what is better). The same problem and options give the same
// answer, in whatever order its units and operations are listed. What finds no place is named with what is in the way;
// late is an answer, unsafe never. Problems: names nobody knows or used twice, negative lengths, spans out of order.
Result<Answer> plan(const Problem& problem, const PlanOptions& options = {});

// What is wrong with a problem as written; empty: nothing.
Problems faults(const Problem& problem);

}  // namespace dampward::line
