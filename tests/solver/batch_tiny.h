#pragma once

#include <algorithm>
#include <limits>
#include <optional>
#include <random>

#include "adapters/files/batches_judged.h"
#include "core/solver/batches.h"

namespace dampward::solver::test {

// A random problem small enough for every batching and every order to be tried.
inline BatchProblem tiny_batches(std::uint32_t seed) {
  std::mt19937 random(seed);
  const auto between = [&](int low, int high) {
    return low + static_cast<int>(random() % static_cast<unsigned>(high - low + 1));
  };
  BatchProblem problem;
  problem.families = between(1, 3);
  for (auto* table : {&problem.setup_times, &problem.setup_costs}) {
    table->resize(problem.families);
    for (auto& row : *table) {
      for (int f = 0; f < problem.families; ++f) row.push_back(between(0, 3));
    }
  }
  const int machines = between(1, 2);
  for (int m = 0; m < machines; ++m) {
    BatchMachine& machine = problem.machines.emplace_back();
    machine.capacity = between(3, 6);
    machine.initial_family = between(0, problem.families - 1);
    int at = 0;
    for (int k = between(1, 3); k > 0; --k) {
      const int from = at + between(0, 4);
      at = from + between(0, 12);
      machine.open.push_back({from, at});
    }
    machine.open.push_back({at + 2, at + between(10, 40)});
  }
  // Jobs that take no time are a case of their own.
  const int shortest = between(0, 4) == 0 ? 0 : 1;
  for (int j = between(1, 5); j > 0; --j) {
    BatchJob& job = problem.jobs.emplace_back();
    job.family = between(0, problem.families - 1);
    job.size = between(0, 3);
    job.release = between(0, 8);
    job.min_time = between(shortest, 5);
    job.max_time = job.min_time + between(0, 3);
    job.due = job.release + job.min_time + between(0, 10);
    const int only = between(0, machines);
    for (int m = 0; m < machines; ++m) {
      if (only == machines || m == only) job.machines.push_back(m);
    }
  }
  problem.weights = {between(0, 5), between(0, 50), between(0, 5), between(0, 1) * between(0, 3)};
  return problem;
}

using files::judged;

// The least weighted cost by trying all: jobs into groups in every way, groups onto machines in every order, each batch at the
// first minute that the referee lets it have and as short as its jobs allow (a longer or later one never costs less). None: no
// plan within the intervals.
class EveryBatching {
 public:
  explicit EveryBatching(const BatchProblem& problem) : problem_(problem) { group(0); }
  std::optional<std::int64_t> best() const { return best_; }

 private:
  void group(int job) {
    if (job == problem_.size()) {
      left_.assign(groups_.size(), true);
      order({});
      return;
    }
    for (std::size_t g = 0; g < groups_.size(); ++g) {
      if (problem_.jobs[groups_[g].front()].family != problem_.jobs[job].family) continue;
      groups_[g].push_back(job);
      group(job + 1);
      groups_[g].pop_back();
    }
    groups_.push_back({job});
    group(job + 1);
    groups_.pop_back();
  }

  // Appends each group that is left to the end of each machine.
  void order(const BatchPlan& plan) {
    if (plan.size() == groups_.size()) {
      const auto verdict = judged(problem_, plan);
      if (verdict.broken.empty() && (!best_ || verdict.weighted < *best_)) best_ = verdict.weighted;
      return;
    }
    for (std::size_t g = 0; g < groups_.size(); ++g) {
      if (!left_[g]) continue;
      for (int m = 0; m < static_cast<int>(problem_.machines.size()); ++m) {
        // Machines one after another: the order between machines means nothing.
        if (!plan.empty() && m < plan.back().machine) continue;
        PlannedBatch batch{m, 0, 0, groups_[g]};
        for (const int j : batch.jobs) batch.length = std::max(batch.length, problem_.jobs[j].min_time);
        if (!first_fit(plan, batch)) continue;
        BatchPlan longer = plan;
        longer.push_back(batch);
        left_[g] = false;
        order(longer);
        left_[g] = true;
      }
    }
  }

  bool first_fit(const BatchPlan& plan, PlannedBatch& batch) const {
    const BatchMachine& machine = problem_.machines[batch.machine];
    int free = 0, family = machine.initial_family;
    for (const PlannedBatch& before : plan) {
      if (before.machine != batch.machine) continue;
      free = before.start + before.length;
      family = problem_.jobs[before.jobs.front()].family;
    }
    const int setup = problem_.setup_times[family][problem_.jobs[batch.jobs.front()].family];
    for (int start = free + setup; start <= machine.open.back().to; ++start) {
      const bool released = std::all_of(batch.jobs.begin(), batch.jobs.end(),
                                        [&](int j) { return problem_.jobs[j].release <= start; });
      const bool open = std::any_of(machine.open.begin(), machine.open.end(), [&](const OpenInterval& it) {
        return it.from < it.to && it.from <= start - setup && start + batch.length <= it.to;
      });
      batch.start = start;
      if (released && open) return true;
    }
    return false;
  }

  const BatchProblem& problem_;
  std::vector<std::vector<int>> groups_;
  std::vector<bool> left_;
  std::optional<std::int64_t> best_;
};

}  // namespace dampward::solver::test
