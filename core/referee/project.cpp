#include "core/referee/project.h"

#include <map>
#include <string>

#include "core/base/format.h"

namespace dampward::referee {
namespace {

void judge_starts(const std::vector<std::int64_t>& starts, std::vector<Violation>& broken) {
  for (std::size_t i = 0; i < starts.size(); ++i) {
    if (starts[i] < 0 || (i == 0 && starts[i] != 0))
      broken.push_back({"start", {std::to_string(i)}, format("Operation {} starts at {}.", i, starts[i])});
  }
}

void judge_gaps(const Project& project, const std::vector<std::int64_t>& starts,
                std::vector<Violation>& broken) {
  for (const ProjectGap& gap : project.gaps) {
    const std::int64_t apart = starts[gap.to] - starts[gap.from];
    if (apart < gap.lag)
      broken.push_back(
          {"gap",
           {std::to_string(gap.from), std::to_string(gap.to)},
           format("From the start of operation {} to that of {} are {}, but at least {} are asked for.",
                  gap.from, gap.to, apart, gap.lag)});
  }
}

// What is taken of a resource changes at starts and ends alone, and stays the same in every moment between.
void judge_capacity(const Project& project, const std::vector<std::int64_t>& starts, std::size_t resource,
                    std::vector<Violation>& broken) {
  std::map<std::int64_t, std::int64_t> changes;
  for (std::size_t i = 0; i < starts.size(); ++i) {
    for (const ProjectDemand& demand : project.operations[i].demands) {
      if (demand.resource != resource) continue;
      changes[starts[i]] += demand.amount;
      changes[starts[i] + project.operations[i].duration] -= demand.amount;
    }
  }
  std::int64_t taken = 0;
  for (const auto& [time, change] : changes) {
    taken += change;
    if (taken > project.capacities[resource] && change > 0)
      broken.push_back({"capacity",
                        {std::to_string(resource)},
                        format("At {} there are {} taken of resource {}, which has {}.", time, taken,
                               resource, project.capacities[resource])});
  }
}

}  // namespace

std::vector<Violation> judge_project(const Project& project, const std::vector<std::int64_t>& starts) {
  std::vector<Violation> broken;
  if (starts.size() != project.operations.size()) {
    broken.push_back(
        {"start", {}, format("{} starts for {} operations.", starts.size(), project.operations.size())});
    return broken;
  }
  judge_starts(starts, broken);
  judge_gaps(project, starts, broken);
  for (std::size_t r = 0; r < project.capacities.size(); ++r) judge_capacity(project, starts, r, broken);
  return broken;
}

}  // namespace dampward::referee
