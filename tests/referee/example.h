#pragma once

#include <set>
#include <string>
#include <vector>

#include "core/referee/judge.h"

// The hand-written day of docs/formats/example-problem.json and example-answer.json, to be spoilt one rule at a time.

struct Day {
  dampward::referee::PlanProblem problem;
  dampward::referee::PlanAnswer answer;

  dampward::referee::Operation& operation(const std::string& id);
  dampward::referee::Gap& gap(const std::string& from);
  dampward::referee::Person& person(const std::string& id);
  dampward::referee::Placement& placement(const std::string& operation);
  void place(const std::string& operation, dampward::referee::Minute start, dampward::referee::Minute end);
  void forget(const std::string& operation);  // its placement
  // Fixes an operation as the answer has it.
  void fix(const std::string& operation);

  // The names of the broken rules, each once.
  std::set<std::string> broken() const;
  // Every sentence, for a failing test to show.
  std::string told() const;
};

Day example_day();

using Rules = std::set<std::string>;
