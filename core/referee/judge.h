#pragma once

#include <string>
#include <vector>

#include "core/referee/answer.h"
#include "core/referee/problem.h"

namespace dampward::referee {

// A rule that an answer breaks.
struct Violation {
  std::string rule;              // its name in the table of docs/formats/timetable.md
  std::vector<std::string> ids;  // what broke it: operations, people, places, units
  std::string sentence;          // the same in plain words
};

// Every rule the answer breaks, in the order of the page's table; none: it is a plan. The problem is taken to be free of the
// faults that faults.h finds; one that is not may hide violations, but is judged all the same.
std::vector<Violation> judge(const PlanProblem& problem, const PlanAnswer& answer);

}  // namespace dampward::referee
