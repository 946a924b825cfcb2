#include "core/solver/batches.h"

#include <algorithm>

namespace dampward::solver {

std::int64_t weighted(const BatchWeights& weights, const BatchCost& cost) {
  return weights.run_time * cost.run_time + weights.late_jobs * cost.late_jobs +
         weights.setup_cost * cost.setup_cost + weights.setup_time * cost.setup_time;
}

BatchCost cost_of(const BatchProblem& problem, const BatchPlan& plan) {
  BatchCost cost;
  for (int m = 0; m < static_cast<int>(problem.machines.size()); ++m) {
    std::vector<const PlannedBatch*> order;
    for (const PlannedBatch& batch : plan) {
      if (batch.machine == m) order.push_back(&batch);
    }
    std::stable_sort(order.begin(), order.end(),
                     [](const auto* a, const auto* b) { return a->start < b->start; });
    int before = problem.machines[m].initial_family;
    for (const PlannedBatch* batch : order) {
      const int family = problem.jobs[batch->jobs.front()].family;
      cost.run_time += batch->length;
      cost.setup_cost += problem.setup_costs[before][family];
      cost.setup_time += problem.setup_times[before][family];
      for (const int job : batch->jobs)
        cost.late_jobs += batch->start + batch->length > problem.jobs[job].due;
      before = family;
    }
  }
  return cost;
}

}  // namespace dampward::solver
