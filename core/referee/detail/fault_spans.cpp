#include "core/referee/detail/fault_rules.h"

namespace dampward::referee {
namespace {

void judge_spans(const std::vector<Span>& spans, const std::string& list, Faults& found) {
  for (std::size_t i = 0; i < spans.size(); ++i) {
    const std::string path = at(list.c_str(), i);
    const std::string written = format("[{}, {}]", spans[i].from, spans[i].to);
    if (spans[i].from >= spans[i].to) {
      found.push_back({path, written, "a span whose second minute is later than its first"});
    } else if (i > 0 && spans[i].from <= spans[i - 1].to) {
      found.push_back({path, format("{} after [{}, {}]", written, spans[i - 1].from, spans[i - 1].to),
                       "spans in order and apart; two that touch are written as one"});
    }
  }
}

}  // namespace

void fault_spans(const Index& index, Faults& found) {
  const PlanProblem& problem = index.problem;
  for (std::size_t i = 0; i < problem.people.size(); ++i) {
    judge_spans(problem.people[i].shifts, at("people", i, "shifts"), found);
    judge_spans(problem.people[i].breaks, at("people", i, "breaks"), found);
  }
  for (std::size_t i = 0; i < problem.ovens.size(); ++i)
    judge_spans(problem.ovens[i].powered, at("ovens", i, "powered"), found);
  for (std::size_t i = 0; i < problem.capacities.size(); ++i) {
    const auto& steps = problem.capacities[i].steps;
    for (std::size_t j = 1; j < steps.size(); ++j) {
      if (steps[j].from <= steps[j - 1].from)
        found.push_back({at("capacities", i, at("steps", j)),
                         format("a step from minute {} after one from {}", steps[j].from, steps[j - 1].from),
                         "steps in order of time"});
    }
  }
}

void fault_skills(const Index& index, Faults& found) {
  const auto& operations = index.problem.operations;
  for (std::size_t i = 0; i < operations.size(); ++i) {
    if (operations[i].attendance != Attendance::unattended && !operations[i].skill)
      found.push_back(
          {at("operations", i, "skill"), "none",
           "the skill its people need, or the one within call; none only where it is unattended"});
  }
}

}  // namespace dampward::referee
