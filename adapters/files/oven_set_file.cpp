#include "adapters/files/oven_set_file.h"

#include "adapters/files/detail/dzn.h"
#include "core/base/format.h"
#include "core/base/text.h"

namespace dampward::files {
namespace {

using detail::DznValue;
using detail::ReadFault;
using Kind = DznValue::Kind;

class OvenSet {
 public:
  OvenSet(const detail::DznValues& values, ReadFault& fault) : values_(values), fault_(fault) {}

  bool read(solver::BatchProblem& problem) {
    return counts() && setups(problem) && machines(problem) && jobs(problem) && weights(problem);
  }

 private:
  const DznValue* find(std::string_view name, Kind kind, const char* form) {
    const auto it = values_.find(name);
    if (it == values_.end()) {
      fault_.at(0, format("no {}", name), form, "The file was cut short, or is none of the oven set.");
      return nullptr;
    }
    // A list without members says nothing of its kind.
    const bool empty = it->second.rows.empty() || it->second.rows.front().empty();
    if (it->second.kind != kind && !(empty && it->second.kind == Kind::list)) {
      fault_.at(it->second.line, format("{} of another form", name), form);
      return nullptr;
    }
    return &it->second;
  }
  bool number(std::string_view name, int low, int high, int& value) {
    const DznValue* it = find(name, Kind::number, "a whole number");
    if (it == nullptr) return false;
    value = it->rows[0][0];
    return (value >= low && value <= high) || fault_.at(it->line, format("{} = {}", name, value),
                                                        format("a whole number from {} to {}", low, high));
  }
  bool list(std::string_view name, int count, int low, std::vector<int>& values) {
    const DznValue* it = find(name, Kind::list, "a list of whole numbers");
    if (it == nullptr) return false;
    values = it->rows[0];
    if (values.size() != static_cast<std::size_t>(count))
      return fault_.at(it->line, format("{} figures in {}", values.size(), name), format("{}", count),
                       "The file was cut short, or its counts are wrong.");
    for (std::size_t k = 0; k < values.size(); ++k) {
      if (values[k] < low)
        return fault_.at(it->line, format("{} {} of {}", values[k], format("at place {}", k + 1), name),
                         format("{} or more", low));
    }
    return true;
  }
  bool table(std::string_view name, int rows, int columns, std::vector<std::vector<int>>& values) {
    const DznValue* it = find(name, Kind::table, "a table of whole numbers");
    if (it == nullptr) return false;
    values = it->rows;
    if (values.size() != static_cast<std::size_t>(rows))
      return fault_.at(it->line, format("{} rows in {}", values.size(), name), format("{}", rows));
    for (std::size_t r = 0; r < values.size(); ++r) {
      if (values[r].size() != static_cast<std::size_t>(columns))
        return fault_.at(it->line, format("{} figures in row {} of {}", values[r].size(), r + 1, name),
                         format("{}", columns));
      for (const int one : values[r]) {
        if (one < 0) return fault_.at(it->line, format("{} in row {} of {}", one, r + 1, name), "0 or more");
      }
    }
    return true;
  }

  bool counts() {
    return number("a", 1, solver::most_families, attributes_) &&
           number("m", 1, solver::most_batch_machines, machines_) &&
           number("s", 0, solver::most_open_intervals, intervals_) &&
           number("n", 1, solver::most_batch_jobs, jobs_);
  }
  bool setups(solver::BatchProblem& problem) {
    problem.families = attributes_;
    if (!table("setup_costs", attributes_ + 1, attributes_, problem.setup_costs) ||
        !table("setup_times", attributes_ + 1, attributes_, problem.setup_times))
      return false;
    problem.setup_costs.pop_back();
    problem.setup_times.pop_back();
    return true;
  }
  bool machines(solver::BatchProblem& problem) {
    std::vector<int> capacity, state;
    std::vector<std::vector<int>> from, to;
    if (!list("max_cap", machines_, 0, capacity) || !list("initState", machines_, 1, state) ||
        !table("m_a_s", machines_, intervals_, from) || !table("m_a_e", machines_, intervals_, to))
      return false;
    for (int m = 0; m < machines_; ++m) {
      solver::BatchMachine& machine = problem.machines.emplace_back();
      machine.capacity = capacity[m];
      machine.initial_family = state[m] - 1;
      for (int k = 0; k < intervals_; ++k) machine.open.push_back({from[m][k], to[m][k]});
    }
    return true;
  }
  bool jobs(solver::BatchProblem& problem) {
    const DznValue* eligible = find("eligible_machine", Kind::sets, "a list of sets of machines");
    if (eligible == nullptr) return false;
    if (eligible->rows.size() != static_cast<std::size_t>(jobs_))
      return fault_.at(eligible->line, format("{} sets in eligible_machine", eligible->rows.size()),
                       format("{}, one for each job", jobs_),
                       "The file was cut short, or its counts are wrong.");
    std::vector<int> release, due, least, most, size, attribute;
    if (!list("earliest_start", jobs_, 0, release) || !list("latest_end", jobs_, 0, due) ||
        !list("min_time", jobs_, 0, least) || !list("max_time", jobs_, 0, most) ||
        !list("size", jobs_, 0, size) || !list("attribute", jobs_, 1, attribute))
      return false;
    for (int j = 0; j < jobs_; ++j) {
      solver::BatchJob& job = problem.jobs.emplace_back();
      job = {attribute[j] - 1, size[j], release[j], due[j], least[j], most[j], eligible->rows[j]};
      for (int& machine : job.machines) --machine;
    }
    return true;
  }
  bool weights(solver::BatchProblem& problem) {
    constexpr int most = 2'000'000'000;
    int normalization = 1;
    solver::BatchWeights& w = problem.weights;
    if (!number("mult_factor_total_runtime", 0, most, w.run_time) ||
        !number("mult_factor_finished_toolate", 0, most, w.late_jobs) ||
        !number("mult_factor_total_setupcosts", 0, most, w.setup_cost) ||
        !number("upper_bound_integer_objective", 1, most, normalization))
      return false;
    problem.normalization = normalization;
    // Instances without it weigh set-up costs alone.
    return values_.count("mult_factor_total_setuptimes") == 0 ||
           number("mult_factor_total_setuptimes", 0, most, w.setup_time);
  }

  const detail::DznValues& values_;
  ReadFault& fault_;
  int attributes_ = 0, machines_ = 0, intervals_ = 0, jobs_ = 0;
};

}  // namespace

bool names_oven_set(std::string_view file_name) {
  return lower_case(file_name).ends_with(".dzn");
}

Result<solver::BatchProblem> read_oven_set(std::string_view text, const std::string& file) {
  ReadFault fault{file, {}};
  detail::DznValues values;
  const std::vector<std::string_view> names = {"a",
                                               "m",
                                               "s",
                                               "n",
                                               "setup_costs",
                                               "setup_times",
                                               "max_cap",
                                               "initState",
                                               "m_a_s",
                                               "m_a_e",
                                               "eligible_machine",
                                               "earliest_start",
                                               "latest_end",
                                               "min_time",
                                               "max_time",
                                               "size",
                                               "attribute",
                                               "upper_bound_integer_objective",
                                               "mult_factor_total_runtime",
                                               "mult_factor_finished_toolate",
                                               "mult_factor_total_setuptimes",
                                               "mult_factor_total_setupcosts"};
  solver::BatchProblem problem;
  if (!detail::read_dzn(text, names, values, fault) || !OvenSet(values, fault).read(problem))
    return *fault.problem;
  Problems rest = solver::faults(problem);
  for (Problem& one : rest) one.place.file = file;
  if (!rest.empty()) return rest;
  return problem;
}

}  // namespace dampward::files
