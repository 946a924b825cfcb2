#pragma once

#include <string>
#include <vector>

#include "core/referee/problem.h"

namespace dampward::referee {

// What makes a problem none: no answer to it could be judged, or no timetable could mend it.
struct Fault {
  std::string path;      // as in JSON: "loads[2].members[0].loading"
  std::string found;     // what stands there
  std::string expected;  // what would be right
};

// Ids used twice, names of nothing, spans out of order, loads and fixed work that contradict themselves, operations that wait
// for each other in a ring. Ranges of single figures are the reader's affair.
std::vector<Fault> faults(const PlanProblem& problem);

}  // namespace dampward::referee
