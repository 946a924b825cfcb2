// Job shops with a crew: jobs and machines, then for each job its operations in order as pairs of machine (from 0) and duration. Each
// needs its machine and one of so many equal operators.
#include "adapters/files/detail/project_readers.h"
#include "core/base/format.h"

namespace dampward::files::detail {
namespace {

// One job's chain between the two dummies, of which the last is put in later.
bool read_job(const NumberLine& line, int machines, int operators, solver::Problem& problem,
              ReadFault& fault) {
  if (line.fields.size() % 2 != 0)
    return fault.at(line.number, format("{} figures", line.fields.size()),
                    "pairs of a machine and a duration");
  int before = 0;
  for (std::size_t k = 0; k < line.fields.size(); k += 2) {
    const auto machine = whole(line.fields[k]), duration = whole(line.fields[k + 1]);
    if (!machine || *machine < 0 || *machine >= machines)
      return fault.at(line.number, format("machine \"{}\"", line.fields[k]),
                      format("one from 0 to {}", machines - 1));
    if (!duration || *duration < 0)
      return fault.at(line.number, format("duration \"{}\"", line.fields[k + 1]),
                      "a whole number, 0 or more");
    const int operation = problem.size();
    solver::Operation made;
    made.duration = *duration;
    made.demands = {{*machine, 1}};
    if (operators > 0) made.demands.push_back({machines, 1});
    problem.arcs.push_back({before, operation, problem.operations[before].duration});
    problem.operations.push_back(std::move(made));
    before = operation;
    if (!counts_fit(line.number, problem.size() + 1, 0, fault)) return false;
  }
  return true;
}

}  // namespace

bool read_jobs(std::string_view text, int operators, solver::Problem& problem, ReadFault& fault) {
  NumberLines lines(text);
  const auto head = lines.next();
  if (!head) return fault.cut_short(1, "a line with the counts of jobs and machines");
  const auto jobs = whole(head->fields[0]);
  const auto machines = head->fields.size() == 2 ? whole(head->fields[1]) : std::nullopt;
  if (!jobs || !machines || *jobs < 1 || *machines < 1)
    return fault.at(head->number, format("\"{}\"", head->text.substr(0, 40)),
                    "the counts of jobs and machines");
  if (!counts_fit(head->number, 2, *machines + 1, fault)) return false;
  problem.operations.push_back({});
  for (int job = 0; job < *jobs; ++job) {
    const auto line = lines.next();
    if (!line)
      return fault.cut_short(lines.last_number(), format("the operations of job {} of {}", job + 1, *jobs));
    if (!read_job(*line, *machines, operators, problem, fault)) return false;
  }
  if (const auto more = lines.next())
    return fault.at(more->number, format("\"{}\"", more->text.substr(0, 40)),
                    format("{} jobs and no more", *jobs),
                    "The first line may count fewer jobs than there are.");
  const int last = problem.size();
  for (int operation = 0; operation < last; ++operation)
    problem.arcs.push_back({operation, last, problem.operations[operation].duration});
  problem.operations.push_back({});
  problem.capacities.assign(static_cast<std::size_t>(*machines), 1);
  if (operators > 0) problem.capacities.push_back(operators);
  return true;
}

}  // namespace dampward::files::detail
