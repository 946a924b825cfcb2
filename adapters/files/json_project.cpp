#include "adapters/files/json_project.h"

#include "adapters/files/json_values.h"

namespace dampward::files {
namespace {

const char* word(solver::Status status) {
  switch (status) {
    case solver::Status::optimal:
      return "optimal";
    case solver::Status::feasible:
      return "feasible";
    case solver::Status::infeasible:
      return "infeasible";
    case solver::Status::unknown:
      break;
  }
  return "unknown";
}

Json conflict_json(const solver::Problem& problem, const solver::Conflict& conflict) {
  Json list = Json::array();
  for (const int arc : conflict.arcs) {
    const solver::Arc& gap = problem.arcs[arc];
    list.push_back({{"kind", "gap"}, {"from", gap.from}, {"to", gap.to}, {"lag", gap.lag}});
  }
  for (const int resource : conflict.resources)
    list.push_back({{"kind", "resource"}, {"resource", resource + 1}});
  return list;
}

}  // namespace

std::string project_json(const solver::Problem& problem, const solver::Outcome& outcome, double seconds,
                         bool dummies, const std::vector<int>& assignments) {
  Json json = {{"verb", "solve"},
               {"operations", problem.size() - (dummies ? 0 : 2)},
               {"status", word(outcome.status)}};
  if (outcome.starts.empty()) {
    json["objective"] = nullptr;
    json["objective_reason"] = outcome.conflict ? "there is no plan" : "no plan was found within the limit";
  } else {
    json["objective"] = outcome.starts.back();
  }
  json["lower_bound"] = outcome.lower_bound;
  json["time_s"] = rounded(seconds, 3);
  json["work"] = outcome.work;
  solver::Starts starts = outcome.starts;
  if (!dummies && !starts.empty()) starts = {starts.begin() + 1, starts.end() - 1};
  json["starts"] = starts;
  json["assignments"] = assignments;
  json["batches"] = Json::array();
  json["conflict"] = outcome.conflict ? conflict_json(problem, *outcome.conflict) : Json::array();
  json["conflict_minimal"] = outcome.conflict && outcome.conflict->minimal;
  json["faults"] = Json::array();
  return document(json);
}

}  // namespace dampward::files
