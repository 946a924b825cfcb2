#include "core/solver/detail/late_bound.h"

#include <algorithm>
#include <numeric>

namespace dampward::solver::detail {
namespace {

constexpr int measures = 5;  // the first: size itself; then dual feasible functions of 1 to 4

struct Candidate {
  int release = 0, due = 0;
  double taken = 0;
};

// Jobs that must run on some machines, the greatest first in each measure.
struct Group {
  std::vector<int> machines;
  std::vector<Candidate> by_measure[measures];
};

std::vector<int> thinned(std::vector<int> points, std::size_t most) {
  std::sort(points.begin(), points.end());
  points.erase(std::unique(points.begin(), points.end()), points.end());
  if (points.size() <= most) return points;
  std::vector<int> kept;
  for (std::size_t k = 0; k < most; ++k) kept.push_back(points[k * (points.size() - 1) / (most - 1)]);
  return kept;
}

class LateBound {
 public:
  LateBound(const BatchProblem& problem, const std::vector<int>& setups, const std::vector<bool>& late)
      : problem_(problem), setups_(setups) {
    for (int j = 0; j < problem.size(); ++j) {
      const BatchJob& job = problem.jobs[j];
      if (late[j] || job.release >= job.due) continue;
      jobs_.push_back(j);
      slowest_ = std::max(slowest_, setups[job.family]);
    }
    std::vector<int> every(problem.machines.size());
    std::iota(every.begin(), every.end(), 0);
    all_ = group(every);
    for (const int m : every) single_.push_back(group({m}));
  }

  // most[e]: over stretches that end by ends[e].
  std::int64_t count() const {
    if (jobs_.empty()) return 0;
    std::vector<int> starts, ends;
    for (const int j : jobs_) {
      starts.push_back(problem_.jobs[j].release);
      ends.push_back(problem_.jobs[j].due);
    }
    const std::size_t points = std::clamp<std::size_t>(40'000 / jobs_.size(), 20, 100);
    starts = thinned(starts, points);
    ends = thinned(ends, points);
    std::vector<std::int64_t> most(ends.size() + 1, 0);
    for (std::size_t e = 0; e < ends.size(); ++e) {
      most[e + 1] = most[e];
      for (const int start : starts) {
        if (start >= ends[e]) break;
        const auto before = std::upper_bound(ends.begin(), ends.end(), start) - ends.begin();
        most[e + 1] = std::max(most[e + 1], most[before] + late_within(start, ends[e]));
      }
    }
    return most.back();
  }

 private:
  Group group(const std::vector<int>& machines) const {
    Group group;
    group.machines = machines;
    for (const int j : jobs_) {
      const BatchJob& job = problem_.jobs[j];
      std::int64_t room = 1;
      bool inside = true;
      for (const int m : job.machines) {
        if (job.size > problem_.machines[m].capacity) continue;
        room = std::max<std::int64_t>(room, problem_.machines[m].capacity);
        inside = inside && std::find(machines.begin(), machines.end(), m) != machines.end();
      }
      if (!inside) continue;
      const double time = job.min_time + setups_[job.family];
      group.by_measure[0].push_back({job.release, job.due, time * job.size});
      for (int k = 1; k < measures; ++k)
        group.by_measure[k].push_back({job.release, job.due, time * weakened_share(job.size, room, k)});
    }
    for (auto& list : group.by_measure)
      std::sort(list.begin(), list.end(),
                [](const Candidate& a, const Candidate& b) { return a.taken > b.taken; });
    return group;
  }

  std::int64_t late_within(int start, int end) const {
    std::int64_t apart = 0;
    for (const Group& group : single_) apart += late_of(group, start, end);
    return single_.size() == 1 ? apart : std::max(apart, late_of(all_, start, end));
  }

  std::int64_t late_of(const Group& group, int start, int end) const {
    double time = 0, room = 0;
    for (const int m : group.machines) {
      const BatchMachine& machine = problem_.machines[m];
      for (const OpenInterval& open : machine.open) {
        const int open_time = std::min(end, open.to) - std::max(start - slowest_, open.from);
        if (open_time <= 0) continue;
        time += open_time;
        room += static_cast<double>(open_time) * machine.capacity;
      }
    }
    std::int64_t most = 0;
    for (int k = 0; k < measures; ++k)
      most = std::max(most, too_many(group.by_measure[k], start, end, k == 0 ? room : time));
    return most;
  }

  static std::int64_t too_many(const std::vector<Candidate>& list, int start, int end, double limit) {
    const auto inside = [&](const Candidate& it) { return it.release >= start && it.due <= end; };
    double sum = 0;
    for (const Candidate& it : list) sum += inside(it) ? it.taken : 0;
    std::int64_t count = 0;
    // Sums of fractions: only what is clearly too much counts.
    limit += 1e-6 * (1 + limit);
    for (auto it = list.begin(); it != list.end() && sum > limit; ++it) {
      if (!inside(*it)) continue;
      sum -= it->taken;
      ++count;
    }
    return count;
  }

  const BatchProblem& problem_;
  const std::vector<int>& setups_;
  std::vector<int> jobs_;
  int slowest_ = 0;
  Group all_;
  std::vector<Group> single_;
};

}  // namespace

double weakened_share(std::int64_t size, std::int64_t capacity, int k) {
  if (k > 1 && size * k > capacity * (k - 1)) return 1;
  if (k > 1 && size * k < capacity) return 0;
  return static_cast<double>(size) / static_cast<double>(capacity);
}

std::int64_t late_for_lack_of_time(const BatchProblem& problem, const std::vector<int>& setups,
                                   const std::vector<bool>& late) {
  return LateBound(problem, setups, late).count();
}

}  // namespace dampward::solver::detail
