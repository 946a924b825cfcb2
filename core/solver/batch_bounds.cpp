#include "core/solver/batch_bounds.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "core/solver/detail/late_bound.h"
#include "core/solver/detail/on_time.h"

namespace dampward::solver {
namespace {

// Size of a job against the largest machine it may use: in any batch these add up to at most one.
struct Share {
  std::int64_t size = 0, capacity = 1;
};

// A lower bound on the batches that some jobs take: their weakened shares, for the k where they come to most. Sums of unlike
// fractions, so only what is clearly above a whole number is rounded up.
class FewestBatches {
 public:
  void add(const Share& job) {
    for (int k = 1; k <= thresholds; ++k) sums_[k - 1] += detail::weakened_share(job.size, job.capacity, k);
    any_ = true;
  }
  std::int64_t count() const {
    const double most = *std::max_element(sums_.begin(), sums_.end());
    return any_ ? std::max(std::int64_t{1}, static_cast<std::int64_t>(std::ceil(most - 1e-6))) : 0;
  }

 private:
  static constexpr int thresholds = 12;
  std::array<double, thresholds> sums_{};
  bool any_ = false;
};

struct Timed {
  Share share;
  int min_time = 0, max_time = 0;
};

// The least sum of lengths and the least number of batches of one family.
struct FamilyBound {
  std::int64_t run_time = 0, batches = 0;
};

// With the lengths that jobs need as steps: most[i] counts batches of steps[i] or longer, over groups of jobs whose lengths lie
// all within [steps_i, steps_k), and so on from steps_k.
FamilyBound bound_of(std::vector<Timed> jobs) {
  std::sort(jobs.begin(), jobs.end(), [](const Timed& a, const Timed& b) { return a.max_time < b.max_time; });
  std::vector<int> steps;
  steps.reserve(jobs.size());
  for (const Timed& job : jobs) steps.push_back(job.min_time);
  std::sort(steps.begin(), steps.end());
  steps.erase(std::unique(steps.begin(), steps.end()), steps.end());
  FamilyBound bound;
  std::vector<std::int64_t> most(steps.size() + 1, 0);
  for (std::size_t i = steps.size(); i-- > 0;) {
    FewestBatches group;
    std::size_t next = 0;
    for (std::size_t k = i + 1; k <= steps.size(); ++k) {
      for (; next < jobs.size() && (k == steps.size() || jobs[next].max_time < steps[k]); ++next) {
        if (jobs[next].min_time >= steps[i]) group.add(jobs[next].share);
      }
      most[i] = std::max(most[i], group.count() + most[k]);
    }
    bound.run_time += most[i] * (steps[i] - (i > 0 ? steps[i - 1] : 0));
  }
  bound.batches = most[0];
  return bound;
}

// The least of a table into a family: of any batch, and of the first one on its machine, which follows another family or what the
// machine was set up for.
struct LeastInto {
  int any = 0, first = 0;
};

LeastInto least_into(const BatchProblem& problem, const std::vector<std::vector<int>>& table, int family) {
  std::vector<bool> before(problem.families, false);
  for (const BatchJob& job : problem.jobs) before[job.family] = true;
  before[family] = false;
  for (const BatchMachine& machine : problem.machines) before[machine.initial_family] = true;
  LeastInto least{table[family][family], std::numeric_limits<int>::max()};
  for (int f = 0; f < problem.families; ++f) {
    if (before[f]) least.first = std::min(least.first, table[f][family]);
  }
  least.any = std::min(least.any, least.first);
  return least;
}

bool always_late(const BatchProblem& problem, const BatchJob& job, int setup) {
  for (const int m : job.machines) {
    const BatchMachine& machine = problem.machines[m];
    if (job.size > machine.capacity) continue;
    for (const OpenInterval& open : machine.open) {
      const int end = std::max(job.release, open.from + setup) + job.min_time;
      if (open.from < open.to && end <= open.to && end <= job.due) return false;
    }
  }
  return true;
}

}  // namespace

BatchCost batch_lower_bound(const BatchProblem& problem, const std::function<bool()>& keep_going) {
  BatchCost bound;
  std::vector<std::vector<Timed>> families(problem.families);
  std::vector<int> setups(problem.families, 0);
  for (const BatchJob& job : problem.jobs) {
    int room = 1;
    for (const int m : job.machines) room = std::max(room, problem.machines[m].capacity);
    families[job.family].push_back({{job.size, room}, job.min_time, job.max_time});
  }
  for (int f = 0; f < problem.families; ++f) {
    if (families[f].empty()) continue;
    const FamilyBound family = bound_of(families[f]);
    const LeastInto cost = least_into(problem, problem.setup_costs, f);
    const LeastInto time = least_into(problem, problem.setup_times, f);
    bound.run_time += family.run_time;
    bound.setup_cost += cost.first + (family.batches - 1) * cost.any;
    bound.setup_time += time.first + (family.batches - 1) * time.any;
    setups[f] = time.any;
  }
  std::vector<bool> late;
  std::vector<int> open;
  for (int j = 0; j < problem.size(); ++j) {
    late.push_back(always_late(problem, problem.jobs[j], setups[problem.jobs[j].family]));
    bound.late_jobs += late.back();
    if (!late.back()) open.push_back(j);
  }
  bound.late_jobs +=
      std::max(detail::late_for_lack_of_time(problem, setups, late),
               static_cast<std::int64_t>(open.size()) - detail::most_on_time(problem, open, keep_going));
  return bound;
}

}  // namespace dampward::solver
