#include "core/solver/detail/time_table.h"

#include <algorithm>
#include <numeric>
#include <utility>

namespace dampward::solver::detail {
namespace {

// The order of the last time is nearly right.
void sort_by(std::vector<int>& order, const std::vector<int>& time) {
  for (std::size_t k = 1; k < order.size(); ++k) {
    const int moved = order[k];
    std::size_t place = k;
    for (; place > 0 && time[order[place - 1]] > time[moved]; --place) order[place] = order[place - 1];
    order[place] = moved;
  }
}

}  // namespace

TimeTable::TimeTable(int capacity, std::vector<Task> tasks)
    : capacity_(capacity),
      tasks_(std::move(tasks)),
      by_from_(tasks_.size()),
      from_(tasks_.size()),
      to_(tasks_.size()) {
  std::iota(by_from_.begin(), by_from_.end(), 0);
  by_to_ = by_from_;
}

void TimeTable::note(const Trail& trail, int task) {
  if (!stale_) {
    const Task& one = tasks_[task];
    if (latest(trail, one, forwards) < earliest(trail, one, forwards) + one.duration)
      stale_ = true;
    else
      noted_.push_back(task);
  }
}

bool TimeTable::propagate(Trail& trail) {
  if (stale_) {
    build(trail);
    if (highest_ > capacity_) {
      for (const Step& step : steps_[forwards]) {
        if (step.height > capacity_) return overload(trail, step);
      }
    }
    noted_.resize(tasks_.size());
    std::iota(noted_.begin(), noted_.end(), 0);
  }
  bool consistent = true;
  work_ += static_cast<long long>(noted_.size() / 2);
  for (const int k : noted_) {
    const Task& task = tasks_[k];
    if (task.demand + highest_ <= capacity_ || trail.fixed(task.variable)) continue;
    if (push(trail, k, forwards) && push(trail, k, backwards)) continue;
    consistent = false;
    break;
  }
  noted_.clear();
  return consistent;
}

// The steps of what must be running.
void TimeTable::build(const Trail& trail) {
  stale_ = false;
  work_ += static_cast<long long>(tasks_.size() / 4);
  for (std::size_t k = 0; k < tasks_.size(); ++k) {
    from_[k] = latest(trail, tasks_[k], forwards);
    to_[k] = earliest(trail, tasks_[k], forwards) + tasks_[k].duration;
  }
  sort_by(by_from_, from_);
  sort_by(by_to_, to_);
  compulsory_.clear();
  for (const int k : by_from_) {
    if (from_[k] < to_[k]) compulsory_.push_back({k, from_[k], to_[k]});
  }
  std::vector<Step>& steps = steps_[forwards];
  steps.clear();
  highest_ = 0;
  int height = 0, since = 0;
  std::size_t s = 0;
  for (std::size_t e = 0; e < by_to_.size();) {
    const int end = by_to_[e];
    if (from_[end] >= to_[end]) {
      ++e;
      continue;
    }
    const int time = s < compulsory_.size() ? std::min(compulsory_[s].from, to_[end]) : to_[end];
    if (height > 0 && since < time) steps.push_back({since, time, height});
    since = time;
    if (to_[end] == time) {
      height -= tasks_[end].demand;
      ++e;
      continue;
    }
    while (s < compulsory_.size() && compulsory_[s].from == time)
      height += tasks_[compulsory_[s++].task].demand;
    highest_ = std::max(highest_, height);
  }
  steps_[backwards].clear();
  for (auto step = steps.rbegin(); step != steps.rend(); ++step)
    steps_[backwards].push_back({-step->to, -step->from, step->height});
}

// Gathers in because_ why enough operations run at the moment to take more than the capacity less `spare`.
void TimeTable::running(int moment, int spare) {
  covering_.clear();
  int taken = spare;
  for (const Compulsory& one : compulsory_) {
    if (one.from > moment) break;
    if (one.to <= moment) continue;
    covering_.push_back(one.task);
    taken += tasks_[one.task].demand;
  }
  for (const int k : covering_) {
    const Task& task = tasks_[k];
    if (taken - task.demand > capacity_) {
      taken -= task.demand;
      continue;
    }
    because_.push_back(at_least(task.variable, moment + 1 - task.duration));
    because_.push_back(at_most(task.variable, moment));
  }
}

bool TimeTable::overload(Trail& trail, const Step& step) {
  because_.clear();
  running(step.from + (step.to - step.from) / 2, 0);
  return trail.contradict(trail.store(because_));
}

bool TimeTable::push(Trail& trail, int k, Direction direction) {
  const Task& task = tasks_[k];
  const std::vector<Step>& steps = steps_[direction];
  int start = earliest(trail, task, direction);
  const int own_from = latest(trail, task, direction), own_to = start + task.duration;
  auto step = std::partition_point(steps.begin(), steps.end(), [&](const Step& s) { return s.to <= start; });
  for (; step != steps.end() && step->from < start + task.duration; ++step) {
    if (step->height + task.demand <= capacity_) continue;
    if (own_from <= step->from && step->to <= own_to) continue;
    while (start < step->to) {
      const int moment = std::min(step->to, start + task.duration) - 1;
      because_.clear();
      because_.push_back(from_time(task, moment + 1 - task.duration, direction));
      running(direction == forwards ? moment : -moment - 1, task.demand);
      if (!trail.push(from_time(task, moment + 1, direction), trail.store(because_))) return false;
      start = moment + 1;
    }
  }
  return true;
}

}  // namespace dampward::solver::detail
