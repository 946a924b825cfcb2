#include "adapters/files/project_judged.h"

#include "core/referee/project.h"

namespace dampward::files {

std::vector<referee::Violation> judged(const solver::Problem& problem, const solver::Starts& starts) {
  referee::Project project;
  for (const solver::Operation& operation : problem.operations) {
    referee::ProjectOperation& copy = project.operations.emplace_back();
    copy.duration = operation.duration;
    for (const solver::Demand& demand : operation.demands)
      copy.demands.push_back({static_cast<std::size_t>(demand.resource), demand.amount});
  }
  for (const solver::Arc& arc : problem.arcs)
    project.gaps.push_back({static_cast<std::size_t>(arc.from), static_cast<std::size_t>(arc.to), arc.lag});
  project.capacities.assign(problem.capacities.begin(), problem.capacities.end());
  return referee::judge_project(project, {starts.begin(), starts.end()});
}

}  // namespace dampward::files
