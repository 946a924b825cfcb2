#include "adapters/files/json_ovens.h"

#include "adapters/files/json_values.h"

namespace dampward::files {
namespace {

const char* word(solver::Status status) {
  if (status == solver::Status::optimal) return "optimal";
  return status == solver::Status::feasible ? "feasible" : "unknown";
}

Json terms_json(const solver::BatchProblem& problem, const solver::BatchOutcome& outcome) {
  Json terms = Json::array();
  const auto add = [&](const char* name, int weight, std::int64_t value, std::int64_t bound) {
    terms.push_back({{"term", name}, {"weight", weight}, {"value", value}, {"lower_bound", bound}});
  };
  const solver::BatchWeights& w = problem.weights;
  const solver::BatchCost &cost = outcome.cost, &least = outcome.lower_bound;
  add("run_time", w.run_time, cost.run_time, least.run_time);
  add("late_jobs", w.late_jobs, cost.late_jobs, least.late_jobs);
  add("setup_cost", w.setup_cost, cost.setup_cost, least.setup_cost);
  add("setup_time", w.setup_time, cost.setup_time, least.setup_time);
  return terms;
}

}  // namespace

std::string ovens_json(const solver::BatchProblem& problem, const solver::BatchOutcome& outcome,
                       double seconds) {
  const auto share = [&](std::int64_t cost) {
    return static_cast<double>(cost) / static_cast<double>(problem.normalization);
  };
  Json json = {{"verb", "solve"}, {"jobs", problem.size()}, {"status", word(outcome.status)}};
  const bool found = !outcome.plan.empty();
  json["objective"] = found ? Json(share(outcome.objective)) : Json();
  json["objective_integer"] = found ? Json(outcome.objective) : Json();
  if (!found) json["objective_reason"] = "no plan was found within the limit";
  json["lower_bound"] = share(outcome.least_objective);
  json["lower_bound_integer"] = outcome.least_objective;
  json["terms"] = found ? terms_json(problem, outcome) : Json::array();
  json["time_s"] = rounded(seconds, 3);
  json["work"] = outcome.work;
  std::vector<int> starts(found ? problem.jobs.size() : 0), machines(starts.size());
  Json batches = Json::array();
  for (const solver::PlannedBatch& batch : outcome.plan) {
    Json jobs = Json::array();
    for (const int job : batch.jobs) {
      jobs.push_back(job + 1);
      starts[job] = batch.start;
      machines[job] = batch.machine + 1;
    }
    batches.push_back({{"machine", batch.machine + 1},
                       {"family", problem.jobs[batch.jobs.front()].family + 1},
                       {"start", batch.start},
                       {"length", batch.length},
                       {"jobs", jobs}});
  }
  json["starts"] = starts;
  Json assignments = Json::array();
  for (std::size_t job = 0; job < machines.size(); ++job)
    assignments.push_back({{"job", job + 1}, {"machine", machines[job]}});
  json["assignments"] = assignments;
  json["batches"] = batches;
  json["conflict"] = Json::array();
  json["faults"] = Json::array();
  return document(json);
}

}  // namespace dampward::files
