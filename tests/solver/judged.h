#pragma once

#include "core/referee/project.h"
#include "core/solver/problem.h"

namespace dampward::solver::test {

// The same problem and starts in the referee's own words.
inline referee::Project as_project(const Problem& problem) {
  referee::Project project;
  for (const Operation& op : problem.operations) {
    referee::ProjectOperation& copy = project.operations.emplace_back();
    copy.duration = op.duration;
    for (const Demand& demand : op.demands)
      copy.demands.push_back({static_cast<std::size_t>(demand.resource), demand.amount});
  }
  for (const Arc& arc : problem.arcs)
    project.gaps.push_back({static_cast<std::size_t>(arc.from), static_cast<std::size_t>(arc.to), arc.lag});
  project.capacities.assign(problem.capacities.begin(), problem.capacities.end());
  return project;
}

inline std::vector<referee::Violation> judged(const Problem& problem, const Starts& starts) {
  return referee::judge_project(as_project(problem), {starts.begin(), starts.end()});
}

}  // namespace dampward::solver::test
