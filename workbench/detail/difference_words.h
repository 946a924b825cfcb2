#pragma once

#include <string>
#include <vector>

#include "workbench/plan.h"
#include "workbench/plan_difference.h"

namespace dampward::workbench {

// What moved, a sentence each, the weightiest first: units, finish times, ovens and holds, peaks, windows, lacquer, air, people.
std::vector<std::string> difference_words(const PlanDifference& difference, const WallClock& clock);

}  // namespace dampward::workbench
