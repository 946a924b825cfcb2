#include "adapters/files/batches_judged.h"

namespace dampward::files {

referee::BatchVerdict judged(const solver::BatchProblem& problem, const solver::BatchPlan& plan) {
  referee::BatchCase copy;
  for (const auto& row : problem.setup_times) copy.setup_times.emplace_back(row.begin(), row.end());
  for (const auto& row : problem.setup_costs) copy.setup_costs.emplace_back(row.begin(), row.end());
  for (const solver::BatchMachine& machine : problem.machines) {
    referee::BatchSite& site = copy.machines.emplace_back();
    site.capacity = machine.capacity;
    site.initial_family = static_cast<std::size_t>(machine.initial_family);
    for (const solver::OpenInterval& open : machine.open) site.open.push_back({open.from, open.to});
  }
  for (const solver::BatchJob& job : problem.jobs)
    copy.jobs.push_back({static_cast<std::size_t>(job.family),
                         job.size,
                         job.release,
                         job.due,
                         job.min_time,
                         job.max_time,
                         {job.machines.begin(), job.machines.end()}});
  const solver::BatchWeights& w = problem.weights;
  copy.run_time_weight = w.run_time;
  copy.late_weight = w.late_jobs;
  copy.setup_cost_weight = w.setup_cost;
  copy.setup_time_weight = w.setup_time;
  std::vector<referee::BatchRun> runs;
  for (const solver::PlannedBatch& batch : plan)
    runs.push_back({static_cast<std::size_t>(batch.machine),
                    batch.start,
                    batch.length,
                    {batch.jobs.begin(), batch.jobs.end()}});
  return referee::judge_batches(copy, runs);
}

}  // namespace dampward::files
