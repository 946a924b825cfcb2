#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "core/referee/judge.h"

// Judges a plan for the scheduling problems of the literature: start-to-start gaps and renewable resources.
namespace dampward::referee {

struct ProjectDemand {
  std::size_t resource = 0;
  std::int64_t amount = 0;
};

struct ProjectOperation {
  std::int64_t duration = 0;
  std::vector<ProjectDemand> demands;
};

// start(to) - start(from) >= lag
struct ProjectGap {
  std::size_t from = 0, to = 0;
  std::int64_t lag = 0;
};

struct Project {
  std::vector<ProjectOperation> operations;
  std::vector<ProjectGap> gaps;
  std::vector<std::int64_t> capacities;
};

// Every rule that the starts break: "start" (the first operation is not at 0, or one is before it, or
// there are not as many starts as operations), "gap", "capacity" (each moment at which what is taken grows beyond it). Ids are
// indices from 0.
std::vector<Violation> judge_project(const Project& project, const std::vector<std::int64_t>& starts);

}  // namespace dampward::referee
