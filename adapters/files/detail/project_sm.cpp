// PSPLIB files with one mode (Kolisch and Sprecher 1997): named counts, then tables under their headings; jobs count from 1.
#include "adapters/files/detail/project_readers.h"
#include "core/base/format.h"

namespace dampward::files::detail {
namespace {

bool is_rule(const NumberLine& line) {
  return line.text.starts_with("***") || line.text.starts_with("---");
}

// The next line under a heading that is neither rule nor the head of a table.
std::optional<NumberLine> next_row(NumberLines& lines) {
  while (auto line = lines.next()) {
    if (!is_rule(*line)) return line;
  }
  return std::nullopt;
}

// "- renewable : 4 R", "jobs (incl. supersource/sink ): 32": the figure after the colon.
std::optional<int> figure_after_colon(const NumberLine& line) {
  const std::size_t colon = line.text.find(':');
  if (colon == std::string_view::npos) return std::nullopt;
  NumberLines rest(line.text.substr(colon + 1));
  const auto fields = rest.next();
  return fields ? whole(fields->fields[0]) : std::nullopt;
}

struct Head {
  std::optional<int> jobs, renewable;
};

// Everything down to the heading of the precedences.
bool read_head(NumberLines& lines, Head& head, ReadFault& fault) {
  while (const auto line = lines.next()) {
    if (line->text.starts_with("PRECEDENCE RELATIONS")) {
      if (head.jobs && head.renewable) return true;
      return fault.at(line->number, "no count of jobs or of renewable resources above the precedences",
                      "\"jobs (incl. supersource/sink ): 32\" and \"- renewable : 4 R\"");
    }
    const std::string_view word = line->fields[0] == "-" && line->fields.size() > 1 ? line->fields[1] : "";
    if (line->text.starts_with("jobs ")) {
      head.jobs = figure_after_colon(*line);
      if (!head.jobs)
        return fault.at(line->number, format("\"{}\"", line->text), "a count of jobs after the colon");
      if (!counts_fit(line->number, *head.jobs, 0, fault)) return false;
    } else if (word == "renewable") {
      head.renewable = figure_after_colon(*line);
      if (!counts_fit(line->number, 2, head.renewable.value_or(-1), fault)) return false;
    } else if (word == "nonrenewable" || word == "doubly") {
      if (figure_after_colon(*line) != 0)
        return fault.at(line->number, format("\"{}\"", line->text),
                        "0 of them: renewable resources alone are read");
    }
  }
  return fault.cut_short(lines.last_number(), "the heading PRECEDENCE RELATIONS");
}

bool read_successors(const NumberLine& line, int job, int jobs, solver::Problem& problem, ReadFault& fault) {
  if (line.fields.size() < 3 || whole(line.fields[0]) != job)
    return fault.at(line.number, format("\"{}\"", line.text.substr(0, 40)), format("the line of job {}", job),
                    "The lines above may count other jobs than there are.");
  if (whole(line.fields[1]) != 1)
    return fault.at(line.number, format("\"{}\" modes", line.fields[1]), "1: several modes are not read");
  const auto count = whole(line.fields[2]);
  if (!count || *count < 0 || line.fields.size() != 3 + static_cast<std::size_t>(*count))
    return fault.at(line.number,
                    format("\"{}\" successors and {} figures after", line.fields[2], line.fields.size() - 3),
                    "the count, and so many successors");
  for (std::size_t k = 3; k < line.fields.size(); ++k) {
    const auto to = whole(line.fields[k]);
    if (!to || *to < 1 || *to > jobs)
      return fault.at(line.number, format("successor \"{}\"", line.fields[k]),
                      format("a job from 1 to {}", jobs));
    problem.arcs.push_back({job - 1, *to - 1, 0});
  }
  return true;
}

bool skip_to(NumberLines& lines, std::string_view heading, ReadFault& fault) {
  const auto line = next_row(lines);
  if (!line) return fault.cut_short(lines.last_number(), format("the heading {}", heading));
  if (!line->text.starts_with(heading))
    return fault.at(line->number, format("\"{}\"", line->text.substr(0, 40)),
                    format("the heading {}", heading),
                    "The lines above may count fewer jobs than there are.");
  const auto columns = next_row(lines);
  return columns || fault.cut_short(lines.last_number(), format("the table under {}", heading));
}

}  // namespace

bool read_sm(std::string_view text, solver::Problem& problem, ReadFault& fault) {
  NumberLines lines(text);
  Head head;
  if (!read_head(lines, head, fault)) return false;
  const int jobs = *head.jobs, resources = *head.renewable;
  if (!next_row(lines)) return fault.cut_short(lines.last_number(), "the table of successors");
  for (int job = 1; job <= jobs; ++job) {
    const auto line = next_row(lines);
    if (!line)
      return fault.cut_short(lines.last_number(), format("the successors of job {} of {}", job, jobs));
    if (!read_successors(*line, job, jobs, problem, fault)) return false;
  }
  if (!skip_to(lines, "REQUESTS/DURATIONS", fault)) return false;
  std::vector<int> operation_lines;
  for (int job = 1; job <= jobs; ++job) {
    const auto line = next_row(lines);
    if (!line)
      return fault.cut_short(lines.last_number(), format("duration and demands of job {} of {}", job, jobs));
    if (whole(line->fields[0]) != job)
      return fault.at(line->number, format("\"{}\"", line->text.substr(0, 40)),
                      format("the line of job {}", job),
                      "The lines above may count other jobs than there are.");
    if (!read_operation(*line, 2, resources, problem, fault)) return false;
    operation_lines.push_back(line->number);
  }
  // A successor waits for the whole duration.
  for (solver::Arc& arc : problem.arcs) arc.lag = problem.operations[arc.from].duration;
  if (resources > 0) {
    if (!skip_to(lines, "RESOURCEAVAILABILITIES", fault)) return false;
    const auto line = next_row(lines);
    if (!line) return fault.cut_short(lines.last_number(), "the capacities");
    if (!read_capacities(*line, resources, operation_lines, problem, fault)) return false;
  }
  return true;
}

}  // namespace dampward::files::detail
