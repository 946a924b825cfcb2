#include "adapters/files/project_file.h"

#include <algorithm>

#include "adapters/files/detail/project_readers.h"
#include "core/base/format.h"
#include "core/base/promise.h"
#include "core/base/text.h"

namespace dampward::files {
namespace detail {

bool counts_fit(int line, int operations, int resources, ReadFault& fault) {
  if (operations < 2 || resources < 0)
    return fault.at(line, format("{} operations and {} resources", operations, resources),
                    "2 operations or more, the first and the last of which are dummies");
  if (operations > solver::most_operations)
    return fault.at(line, format("{} operations", operations), format("at most {}", solver::most_operations),
                    "Split the problem, or leave out what need not be planned together.");
  constexpr int most_resources = 1000;
  if (resources > most_resources)
    return fault.at(line, format("{} resources", resources), format("at most {}", most_resources));
  return true;
}

bool read_operation(const NumberLine& line, std::size_t first, int resources, solver::Problem& problem,
                    ReadFault& fault) {
  const std::size_t count = line.fields.size();
  if (count != first + 1 + static_cast<std::size_t>(resources))
    return fault.at(line.number, format("{} figures", count),
                    format("{}: number, mode, duration, and a demand of each of {} resources",
                           first + 1 + static_cast<std::size_t>(resources), resources));
  solver::Operation operation;
  const auto duration = whole(line.fields[first]);
  if (!duration || *duration < 0)
    return fault.at(line.number, format("duration \"{}\"", line.fields[first]), "a whole number, 0 or more");
  operation.duration = *duration;
  for (int r = 0; r < resources; ++r) {
    const auto amount = whole(line.fields[first + 1 + static_cast<std::size_t>(r)]);
    if (!amount || *amount < 0)
      return fault.at(line.number,
                      format("demand \"{}\"", line.fields[first + 1 + static_cast<std::size_t>(r)]),
                      "a whole number, 0 or more");
    if (*amount > 0) operation.demands.push_back({r, *amount});
  }
  problem.operations.push_back(std::move(operation));
  return true;
}

bool read_capacities(const NumberLine& line, int resources, const std::vector<int>& lines,
                     solver::Problem& problem, ReadFault& fault) {
  if (line.fields.size() != static_cast<std::size_t>(resources))
    return fault.at(line.number, format("{} capacities", line.fields.size()),
                    format("{}, one for each resource", resources));
  for (const std::string_view field : line.fields) {
    const auto capacity = whole(field);
    if (!capacity || *capacity < 0)
      return fault.at(line.number, format("capacity \"{}\"", field), "a whole number, 0 or more");
    problem.capacities.push_back(*capacity);
  }
  for (std::size_t i = 0; i < problem.operations.size(); ++i) {
    for (const solver::Demand& demand : problem.operations[i].demands) {
      if (demand.amount > problem.capacities[demand.resource])
        return fault.at(lines[i], format("a demand of {} of resource {}", demand.amount, demand.resource + 1),
                        format("at most its capacity, {}", problem.capacities[demand.resource]),
                        "No plan can hold this operation: correct the demand or the capacity.");
    }
  }
  return true;
}

}  // namespace detail

std::optional<ProjectFormat> project_format(std::string_view file_name) {
  const std::string name = lower_case(file_name);
  if (name.ends_with(".sch")) return ProjectFormat::sch;
  if (name.ends_with(".sm")) return ProjectFormat::sm;
  return std::nullopt;
}

Result<solver::Problem> read_project(std::string_view text, ProjectFormat format, const std::string& file,
                                     int operators) {
  solver::Problem problem;
  detail::ReadFault fault{file, {}};
  const bool read = format == ProjectFormat::jobs  ? detail::read_jobs(text, operators, problem, fault)
                    : format == ProjectFormat::sch ? detail::read_sch(text, problem, fault)
                                                   : detail::read_sm(text, problem, fault);
  if (!read) return *fault.problem;
  Problems rest = solver::faults(problem);
  for (Problem& one : rest) one.place.file = file;
  if (!rest.empty()) return rest;
  return problem;
}

std::vector<int> operators_of(const solver::Problem& problem, const solver::Starts& starts, int operators) {
  std::vector<int> order;
  for (int i = 1; i + 1 < problem.size(); ++i) order.push_back(i);
  std::stable_sort(order.begin(), order.end(), [&](int a, int b) { return starts[a] < starts[b]; });
  std::vector<int> free_from(static_cast<std::size_t>(operators), 0);
  std::vector<int> assigned(order.size(), 0);
  for (const int i : order) {
    const auto free =
        std::find_if(free_from.begin(), free_from.end(), [&](int from) { return from <= starts[i]; });
    DAMPWARD_PROMISE(free != free_from.end(), "no more operations run at once than there are operators");
    *free = starts[i] + problem.operations[i].duration;
    assigned[static_cast<std::size_t>(i - 1)] = static_cast<int>(free - free_from.begin()) + 1;
  }
  return assigned;
}

}  // namespace dampward::files
