#include "core/solver/detail/energy_check.h"

#include <algorithm>
#include <numeric>
#include <utility>

namespace dampward::solver::detail {

EnergyCheck::EnergyCheck(int capacity, std::vector<TimeTable::Task> tasks)
    : capacity_(capacity),
      tasks_(std::move(tasks)),
      earliest_(tasks_.size()),
      end_(tasks_.size()),
      by_start_(tasks_.size()),
      free_(tasks_.size()),
      until_start_(tasks_.size()) {
  std::iota(by_start_.begin(), by_start_.end(), 0);
  by_end_ = by_start_;
}

void EnergyCheck::take_down(const Trail& trail) {
  std::vector<std::pair<int, int>> changes;
  for (std::size_t k = 0; k < tasks_.size(); ++k) {
    const TimeTable::Task& task = tasks_[k];
    const int earliest = trail.lower(view_of(task.variable)), latest = trail.upper(view_of(task.variable));
    earliest_[k] = earliest;
    end_[k] = latest + task.duration;
    const int compulsory = std::max(0, earliest + task.duration - latest);
    free_[k] = std::int64_t{task.duration - compulsory} * task.demand;
    if (compulsory == 0) continue;
    changes.push_back({latest, task.demand});
    changes.push_back({earliest + task.duration, -task.demand});
  }
  std::sort(changes.begin(), changes.end());
  times_.clear();
  area_.clear();
  height_.clear();
  std::int64_t area = 0;
  int height = 0, since = 0;
  for (const auto& [time, change] : changes) {
    area += std::int64_t{height} * (time - since);
    since = time;
    height += change;
    times_.push_back(time);
    area_.push_back(area);
    height_.push_back(height);
  }
  std::sort(by_start_.begin(), by_start_.end(), [&](int a, int b) { return earliest_[a] > earliest_[b]; });
  std::sort(by_end_.begin(), by_end_.end(), [&](int a, int b) { return end_[a] < end_[b]; });
  for (std::size_t k = 0; k < tasks_.size(); ++k) until_start_[k] = compulsory_until(earliest_[k]);
}

std::int64_t EnergyCheck::compulsory_until(int time) const {
  const auto next = std::upper_bound(times_.begin(), times_.end(), time) - times_.begin();
  if (next == 0) return 0;
  return area_[next - 1] + std::int64_t{height_[next - 1]} * (time - times_[next - 1]);
}

bool EnergyCheck::propagate(Trail& trail) {
  take_down(trail);
  work_ += static_cast<long long>(tasks_.size() * tasks_.size() / 32);
  int last_end = -1;
  for (const int bounding : by_end_) {
    const int to = end_[bounding];
    if (to == last_end) continue;
    last_end = to;
    const std::int64_t until_end = compulsory_until(to);
    std::int64_t spent = 0;
    // Ever longer stretches that end here.
    for (const int k : by_start_) {
      if (end_[k] > to) continue;
      spent += free_[k];
      const int from = earliest_[k];
      if (spent + until_end - until_start_[k] > std::int64_t{capacity_} * (to - from))
        return overspent(trail, from, to);
    }
  }
  return true;
}

bool EnergyCheck::overspent(Trail& trail, int from, int to) {
  const auto least_inside = [&](std::size_t k) {
    const int duration = tasks_[k].duration;
    return std::max(
        0, std::min({to - from, duration, earliest_[k] + duration - from, to - (end_[k] - duration)}));
  };
  std::int64_t spare = -std::int64_t{capacity_} * (to - from) - 1;
  for (std::size_t k = 0; k < tasks_.size(); ++k) spare += std::int64_t{least_inside(k)} * tasks_[k].demand;
  because_.clear();
  for (std::size_t k = 0; k < tasks_.size(); ++k) {
    const TimeTable::Task& task = tasks_[k];
    int inside = least_inside(k);
    const int less = static_cast<int>(std::min<std::int64_t>(inside, spare / task.demand));
    inside -= less;
    spare -= std::int64_t{less} * task.demand;
    if (inside == 0) continue;
    because_.push_back(at_least(task.variable, from + inside - task.duration));
    because_.push_back(at_most(task.variable, to - inside));
  }
  return trail.contradict(trail.store(because_));
}

}  // namespace dampward::solver::detail
