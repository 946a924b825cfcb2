#include "apps/cli/solve_ovens.h"

#include <unistd.h>

#include <chrono>

#include "adapters/files/batches_judged.h"
#include "adapters/files/json_ovens.h"
#include "adapters/files/oven_set_file.h"
#include "adapters/files/text_file.h"
#include "apps/cli/asked.h"
#include "apps/cli/interrupt.h"
#include "apps/cli/page_text.h"
#include "apps/cli/progress.h"
#include "apps/cli/side_by_side.h"
#include "apps/cli/solve_limits.h"
#include "apps/cli/verbs.h"
#include "core/base/format.h"
#include "core/solver/batch_search.h"

namespace dampward::cli {
namespace {

using Clock = std::chrono::steady_clock;

std::string jobs_of(const solver::PlannedBatch& batch) {
  std::string text;
  for (const int job : batch.jobs) text += (text.empty() ? "" : ", ") + std::to_string(job + 1);
  return text;
}

std::vector<std::string> summary(const solver::BatchProblem& problem, const solver::BatchOutcome& outcome) {
  if (outcome.plan.empty()) return {"Unknown: within the limit no plan was found."};
  const solver::BatchCost& cost = outcome.cost;
  std::vector<std::string> lines = {
      outcome.status == solver::Status::optimal
          ? format("Optimal: {} jobs in {} batches cost {}, and proved is that none can cost less.",
                   problem.size(), outcome.plan.size(), outcome.objective)
          : format("Feasible: {} jobs in {} batches cost {}; proved is only that none can cost below {}.",
                   problem.size(), outcome.plan.size(), outcome.objective, outcome.least_objective),
      format("Run time {}, late jobs {}, set-up cost {}, set-up time {}; over {}: {}", cost.run_time,
             cost.late_jobs, cost.setup_cost, cost.setup_time, problem.normalization,
             fixed(static_cast<double>(outcome.objective) / static_cast<double>(problem.normalization), 6))};
  for (const solver::PlannedBatch& batch : outcome.plan)
    lines.push_back(format("machine {:>2} from {:>6} to {:>6}, family {}: jobs {}", batch.machine + 1,
                           batch.start, batch.start + batch.length,
                           problem.jobs[batch.jobs.front()].family + 1, jobs_of(batch)));
  return lines;
}

}  // namespace

Answer solve_ovens(const Call& call) {
  const auto begun = Clock::now();
  Asked asked(call);
  const SolveLimits limits = limits_of(asked);
  if (!call.answer.empty())
    return faulty(call,
                  {{{"command line"}, "--answer", "it only belongs to a timetable problem", "Use --json."}});
  if (!asked.problems().empty()) return faulty(call, asked.problems());
  const auto text = files::read_text(call.problem, call.problem);
  if (!text) return faulty(call, text.problems());
  const auto problem = files::read_oven_set(*text, call.problem);
  if (!problem) return faulty(call, problem.problems());

  Progress progress(screen_of(STDERR_FILENO));
  progress.say("searching");
  const auto taken = [&] { return std::chrono::duration<double>(Clock::now() - begun); };
  solver::BatchSearchOptions options;
  options.work = limits.work;
  options.seed = limits.seed;
  if (limits.threads == 2) options.executor = side_by_side;
  options.keep_going = [&] { return !interrupted() && (!limits.time || taken() < *limits.time); };
  if (limits.time) options.share_used = [&] { return taken() / *limits.time; };
  options.on_progress = [&](std::int64_t cost, std::int64_t bound) {
    progress.say(format("a plan that costs {}, none below {}", cost, bound));
  };
  const auto outcome = solver::solve(*problem, options);
  if (!outcome) return faulty(call, outcome.problems());

  if (!outcome->plan.empty()) {
    const referee::BatchVerdict verdict = files::judged(*problem, outcome->plan);
    if (!verdict.broken.empty() || verdict.weighted != outcome->objective)
      return {
          "",
          "Our own mistake, please report it: the plan breaks a rule, so it is not shown. " +
              (verdict.broken.empty() ? format("It costs {}, not {}.", verdict.weighted, outcome->objective)
                                      : verdict.broken.front().sentence) +
              "\n",
          ExitCode::our_fault};
  }
  Answer answer;
  answer.out = call.json ? files::ovens_json(*problem, *outcome, taken().count())
                         : as_page(summary(*problem, *outcome));
  if (outcome->plan.empty()) answer.code = ExitCode::no_safe_answer;
  if (interrupted()) answer.code = ExitCode::our_fault;
  return answer;
}

}  // namespace dampward::cli
