#pragma once

#include <cstdint>
#include <vector>

#include "core/solver/detail/time_table.h"
#include "core/solver/detail/trail.h"

namespace dampward::solver::detail {

// One resource: in no stretch of time may operations have to spend more of it than there is. Stretches run from an earliest start
// to a latest end; within counts what lies in them whole, and what must run in them whenever it starts (Vilím 2011, the check of
// time-table edge-finding). Explained by what each operation spends at least in the stretch (Schutt, Feydy and Stuckey 2013).
class EnergyCheck {
 public:
  EnergyCheck(int capacity, std::vector<TimeTable::Task> tasks);

  // False: some stretch is overspent, told by the trail.
  bool propagate(Trail& trail);
  long long work() const { return work_; }

 private:
  void take_down(const Trail& trail);
  std::int64_t compulsory_until(int time) const;
  bool overspent(Trail& trail, int from, int to);

  int capacity_;
  std::vector<TimeTable::Task> tasks_;
  std::vector<int> earliest_, end_;        // earliest start, latest end of each
  std::vector<int> by_start_, by_end_;     // tasks by these
  std::vector<int> times_;                 // where the compulsory height changes
  std::vector<std::int64_t> area_;         // compulsory energy before each
  std::vector<int> height_;                // from each on
  std::vector<std::int64_t> free_;         // energy of each task beyond its compulsory part
  std::vector<std::int64_t> until_start_;  // compulsory energy before the earliest start of each
  std::vector<Literal> because_;
  long long work_ = 0;
};

}  // namespace dampward::solver::detail
