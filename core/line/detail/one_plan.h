#pragma once

#include <string>
#include <vector>

#include "core/line/planner.h"

namespace dampward::line::detail {

// How a problem is gone about.
struct Manner {
  std::vector<std::string> ahead{};  // units placed before all others, in this order, whatever their urgency
  int more_orders = 0;               // so many shuffled orders more within each block
  bool every_start = false;          // try every start of all operations together, where they are few enough
};

struct OnePlan {
  Answer answer;
  bool stopped = false;  // the caller ended it early
};

// The problem gone through once. Promise of the caller: it has no faults.
OnePlan one_plan(const Problem& problem, const PlanOptions& options, const Manner& manner = {});

}  // namespace dampward::line::detail
