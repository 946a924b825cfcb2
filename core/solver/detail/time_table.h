#pragma once

#include <vector>

#include "core/solver/detail/trail.h"

namespace dampward::solver::detail {

// One resource: in every moment the operations that must be running take no more than its capacity, and what would not fit
// beside them starts later, or earlier. Explained moment by moment (Schutt, Feydy, Stuckey and Wallace 2011).
class TimeTable {
 public:
  struct Task {
    int variable;  // its start
    int duration, demand;
  };
  // Every duration and demand is above zero.
  TimeTable(int capacity, std::vector<Task> tasks);

  // A bound of the task's start has changed.
  void note(const Trail& trail, int task);
  // The trail went back: all has to be looked at anew, once anything changes.
  void forget() { stale_ = true; }
  bool propagate(Trail& trail);
  const std::vector<Task>& tasks() const { return tasks_; }
  long long work() const { return work_; }

 private:
  // Time runs backwards in the second direction, where an operation "starts" at minus its end.
  enum Direction { forwards = 0, backwards = 1 };
  struct Compulsory {
    int task;
    int from, to;  // it runs here whenever it starts
  };
  struct Step {
    int from, to, height;
  };
  int earliest(const Trail& trail, const Task& task, Direction direction) const {
    return trail.lower(view_of(task.variable) + direction) - (direction == backwards ? task.duration : 0);
  }
  int latest(const Trail& trail, const Task& task, Direction direction) const {
    return -trail.lower(view_of(task.variable) + 1 - direction) -
           (direction == backwards ? task.duration : 0);
  }
  // "Starts at `time` or later", as seen in the direction.
  Literal from_time(const Task& task, int time, Direction direction) const {
    return {view_of(task.variable) + direction, time + (direction == backwards ? task.duration : 0)};
  }
  void build(const Trail& trail);
  bool overload(Trail& trail, const Step& step);
  bool push(Trail& trail, int task, Direction direction);
  void running(int moment, int spare);

  int capacity_;
  std::vector<Task> tasks_;
  std::vector<int> by_from_, by_to_;  // tasks by where their compulsory parts begin and end
  std::vector<int> from_, to_;        // of each task
  std::vector<Compulsory> compulsory_;
  std::vector<Step> steps_[2];  // as seen in each direction
  int highest_ = 0;
  bool stale_ = true;
  std::vector<int> noted_;  // tasks, where the steps are not stale
  std::vector<Literal> because_;
  std::vector<int> covering_;
  long long work_ = 0;
};

}  // namespace dampward::solver::detail
