#pragma once

#include <vector>

#include "core/solver/problem.h"

namespace dampward::solver::detail {

// What is taken of every resource over time, as steps at the moments where something changes.
class Profile {
 public:
  explicit Profile(const Problem& problem);

  void clear();
  // The first start from `from` on at which the operation fits beside what is placed; always found, since its demands are within
  // capacity.
  int earliest_fit(int operation, int from) const;
  void place(int operation, int start) { add(operation, start, 1); }
  void remove(int operation, int start) { add(operation, start, -1); }

 private:
  void add(int operation, int start, int sign);
  int step_at(int time) const;  // the last step that begins at or before
  int begin_step(int time);     // the step that begins there, made if need be

  const Problem& problem_;
  int resources_;
  std::vector<int> times_;  // ascending, the first 0
  std::vector<int> taken_;  // resources_ figures for each step
};

}  // namespace dampward::solver::detail
