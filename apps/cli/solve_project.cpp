#include "apps/cli/solve_project.h"

#include <unistd.h>

#include <chrono>

#include "adapters/files/json_project.h"
#include "adapters/files/project_judged.h"
#include "adapters/files/text_file.h"
#include "apps/cli/asked.h"
#include "apps/cli/interrupt.h"
#include "apps/cli/page_text.h"
#include "apps/cli/progress.h"
#include "apps/cli/side_by_side.h"
#include "apps/cli/solve_limits.h"
#include "apps/cli/verbs.h"
#include "core/base/format.h"
#include "core/solver/search.h"

namespace dampward::cli {
namespace {

using Clock = std::chrono::steady_clock;

std::vector<std::string> summary(const solver::Problem& problem, const solver::Outcome& outcome) {
  std::vector<std::string> lines;
  switch (outcome.status) {
    case solver::Status::optimal:
      lines.push_back(
          format("Optimal: the last of {} operations starts at {}, and proved is that none can do better.",
                 problem.size(), outcome.starts.back()));
      break;
    case solver::Status::feasible:
      lines.push_back(
          format("Feasible: the last of {} operations starts at {}; proved is only that it cannot before {}.",
                 problem.size(), outcome.starts.back(), outcome.lower_bound));
      break;
    case solver::Status::infeasible:
      lines.push_back("Infeasible: no plan keeps all of these together:");
      break;
    case solver::Status::unknown:
      lines.push_back("Unknown: within the limit neither a plan was found nor that there is none.");
      break;
  }
  for (std::size_t i = 0; i < outcome.starts.size(); ++i)
    lines.push_back(format("{:>6} starts at {}", i, outcome.starts[i]));
  if (!outcome.conflict) return lines;
  for (const int arc : outcome.conflict->arcs) {
    const solver::Arc& gap = problem.arcs[arc];
    lines.push_back(gap.lag < 0 ? format("  {} starts at most {} after {}", gap.from, -gap.lag, gap.to)
                                : format("  {} starts at least {} after {}", gap.to, gap.lag, gap.from));
  }
  for (const int resource : outcome.conflict->resources)
    lines.push_back(format("  resource {} has {}", resource + 1, problem.capacities[resource]));
  lines.push_back(outcome.conflict->minimal
                      ? "Without any one of them there is a plan that keeps the others."
                      : "Some of them may have no part in it: the limit ended the search for fewer.");
  return lines;
}

}  // namespace

Answer solve_project(const Call& call, files::ProjectFormat read_as) {
  const auto begun = Clock::now();
  Asked asked(call);
  const SolveLimits limits = limits_of(asked);
  const bool jobs = read_as == files::ProjectFormat::jobs;
  if (!jobs) asked.out_of_place({"operators"}, "beside --format jobs");
  const int operators = asked.whole("operators", 1, 1000).value_or(0);
  if (!call.answer.empty())
    return faulty(call,
                  {{{"command line"}, "--answer", "it only belongs to a timetable problem", "Use --json."}});
  if (!asked.problems().empty()) return faulty(call, asked.problems());
  const auto text = files::read_text(call.problem, call.problem);
  if (!text) return faulty(call, text.problems());
  const auto problem = files::read_project(*text, read_as, call.problem, operators);
  if (!problem) return faulty(call, problem.problems());

  Progress progress(screen_of(STDERR_FILENO));
  progress.say("searching");
  solver::SearchOptions options;
  options.work = limits.work;
  options.seed = limits.seed;
  if (limits.threads == 2) options.executor = side_by_side;
  options.keep_going = [&] {
    return !interrupted() && (!limits.time || Clock::now() - begun < *limits.time);
  };
  options.on_progress = [&](const solver::Starts& starts, int bound) {
    progress.say(format("a plan of {}, none below {}", starts.back(), bound));
  };
  const auto outcome = solver::solve(*problem, options);
  if (!outcome) return faulty(call, outcome.problems());
  const double seconds = std::chrono::duration<double>(Clock::now() - begun).count();

  Answer answer;
  if (!outcome->starts.empty()) {
    const auto broken = files::judged(*problem, outcome->starts);
    if (!broken.empty())
      return {"",
              "Our own mistake, please report it: the plan breaks a rule, so it is not shown. " +
                  broken.front().sentence + "\n",
              ExitCode::our_fault};
  }
  const bool crewed = jobs && operators > 0 && !outcome->starts.empty();
  const std::vector<int> crew =
      crewed ? files::operators_of(*problem, outcome->starts, operators) : std::vector<int>{};
  answer.out = call.json ? files::project_json(*problem, *outcome, seconds, !jobs, crew)
                         : as_page(summary(*problem, *outcome));
  if (outcome->starts.empty()) answer.code = ExitCode::no_safe_answer;
  if (interrupted()) answer.code = ExitCode::our_fault;
  return answer;
}

}  // namespace dampward::cli
