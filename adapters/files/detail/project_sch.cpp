// ProGen/max files (Schwindt 1996): counts; arcs of each activity with their lags; durations and demands; capacities.
#include "adapters/files/detail/project_readers.h"
#include "core/base/format.h"

namespace dampward::files::detail {
namespace {

// Every line of an activity begins with its number and its one mode.
bool begins_right(const NumberLine& line, int activity, ReadFault& fault) {
  if (line.fields.size() < 3 || whole(line.fields[0]) != activity)
    return fault.at(line.number, format("\"{}\"", line.text.substr(0, 40)),
                    format("the line of activity {}", activity),
                    "The first line may count other activities than there are.");
  if (whole(line.fields[1]) != 1)
    return fault.at(line.number, format("\"{}\" modes", line.fields[1]), "1: several modes are not read");
  return true;
}

bool read_arcs(const NumberLine& line, int from, int count, solver::Problem& problem, ReadFault& fault) {
  if (!begins_right(line, from, fault)) return false;
  const auto arcs = whole(line.fields[2]);
  if (!arcs || *arcs < 0 || line.fields.size() != 3 + 2 * static_cast<std::size_t>(*arcs))
    return fault.at(line.number,
                    format("\"{}\" successors and {} figures after", line.fields[2], line.fields.size() - 3),
                    "the count, so many successors, and so many lags in brackets");
  const auto k = static_cast<std::size_t>(*arcs);
  for (std::size_t a = 0; a < k; ++a) {
    const auto to = whole(line.fields[3 + a]);
    const auto lag = bracketed(line.fields[3 + k + a]);
    if (!to || *to < 0 || *to >= count)
      return fault.at(line.number, format("successor \"{}\"", line.fields[3 + a]),
                      format("an activity from 0 to {}", count - 1));
    if (!lag)
      return fault.at(line.number, format("lag \"{}\"", line.fields[3 + k + a]),
                      "a whole number in brackets, such as [-3]");
    problem.arcs.push_back({from, *to, *lag});
  }
  return true;
}

}  // namespace

bool read_sch(std::string_view text, solver::Problem& problem, ReadFault& fault) {
  NumberLines lines(text);
  const auto first = lines.next();
  if (!first) return fault.cut_short(0, "a first line with the numbers of activities and resources");
  const auto activities = whole(first->fields[0]);
  const auto resources = first->fields.size() > 1 ? whole(first->fields[1]) : std::nullopt;
  if (!activities || !resources || *activities < 0 || *activities > solver::latest_time)
    return fault.at(first->number, format("\"{}\"", first->text.substr(0, 40)),
                    "the numbers of real activities and of resources");
  for (std::size_t k = 2; k < first->fields.size(); ++k) {
    if (whole(first->fields[k]) != 0)
      return fault.at(first->number, format("\"{}\" resources of another kind", first->fields[k]),
                      "0: renewable resources alone are read");
  }
  const int count = *activities + 2;
  if (!counts_fit(first->number, count, *resources, fault)) return false;
  for (int i = 0; i < count; ++i) {
    const auto line = lines.next();
    if (!line) return fault.cut_short(lines.last_number(), format("the arcs of activity {} of {}", i, count));
    if (!read_arcs(*line, i, count, problem, fault)) return false;
  }
  std::vector<int> operation_lines;
  for (int i = 0; i < count; ++i) {
    const auto line = lines.next();
    if (!line)
      return fault.cut_short(lines.last_number(),
                             format("duration and demands of activity {} of {}", i, count));
    if (!begins_right(*line, i, fault) || !read_operation(*line, 2, *resources, problem, fault)) return false;
    operation_lines.push_back(line->number);
  }
  if (*resources > 0) {
    const auto line = lines.next();
    if (!line) return fault.cut_short(lines.last_number(), "the capacities");
    if (!read_capacities(*line, *resources, operation_lines, problem, fault)) return false;
  }
  if (const auto more = lines.next())
    return fault.at(more->number, format("\"{}\" after the capacities", more->text.substr(0, 40)),
                    "the end of the file", "The first line may count fewer activities than there are.");
  return true;
}

}  // namespace dampward::files::detail
