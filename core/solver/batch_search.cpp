#include "core/solver/batch_search.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/solver/batch_bounds.h"
#include "core/solver/detail/annealer.h"
#include "core/solver/detail/batch_builder.h"

namespace dampward::solver {
namespace {

using detail::Annealer;

constexpr std::int64_t steps_per_move = 40;
constexpr std::int64_t most_moves_between_meetings = 10'000;

// base^exponent for an exponent from 0 to 1, from square roots alone: those are the same to the last digit on every machine.
double power(double base, double exponent) {
  double result = 1;
  for (int bit = 0; bit < 30; ++bit) {
    base = std::sqrt(base);
    exponent *= 2;
    if (exponent >= 1) {
      result *= base;
      exponent -= 1;
    }
  }
  return result;
}

// How hot each of three coolings begins and all of them end, in units of cost.
struct Heat {
  double first = 0, warm = 0, cold = 0;
};

// Where some job could be on time, a late job is what plans differ by; where none could, the lengths of batches. All end where
// hardly a unit of the cheapest term is taken back.
// Tried on the set of Lackner et al. with up to 500 jobs: from 0.03 of a late job, or to 1 in place of 0.3, plans cost more; from
// 0.3 of one they cost the same.
Heat heat_of(const BatchProblem& problem, bool all_late) {
  const BatchWeights& w = problem.weights;
  int cheapest = 0, longest = 0;
  for (const int one : {w.run_time, w.late_jobs, w.setup_cost, w.setup_time}) {
    if (one > 0 && (cheapest == 0 || one < cheapest)) cheapest = one;
  }
  for (const BatchJob& job : problem.jobs) longest = std::max(longest, job.min_time);
  const double batch = static_cast<double>(w.run_time) * longest;
  Heat heat{0.15 * w.late_jobs, 0.0075 * w.late_jobs, 0.3 * std::max(cheapest, 1)};
  if (all_late || heat.first < 0.5 * batch) heat = {0.5 * batch, 0.1 * batch, heat.cold};
  return {std::max(heat.first, heat.cold), std::max(heat.warm, heat.cold), heat.cold};
}

// Ends of the first and the second cooling, as shares of the search.
constexpr double first_end = 0.6, second_end = 0.8;

int round_at(double share) {
  return share < first_end ? 0 : share < second_end ? 1 : 2;
}

double temperature_at(double share, const Heat& heat) {
  const double begun[] = {0, first_end, second_end, 1};
  const int round = round_at(share);
  const double done = (share - begun[round]) / (begun[round + 1] - begun[round]);
  const double hot = round == 0 ? heat.first : heat.warm;
  return hot * power(heat.cold / hot, std::clamp(done, 0.0, 1.0));
}

class Search {
 public:
  Search(const BatchProblem& problem, const BatchSearchOptions& options)
      : problem_(problem),
        options_(options),
        chains_{Annealer(problem, 2 * options.seed), Annealer(problem, 2 * options.seed + 1)} {}

  BatchOutcome run() {
    detail::BatchState first(problem_);
    detail::build(first);
    for (Annealer& chain : chains_) chain.load(first.plan());
    take_best();
    outcome_.lower_bound = batch_lower_bound(problem_, options_.keep_going);
    outcome_.least_objective = weighted(problem_.weights, outcome_.lower_bound);
    const Heat heat = heat_of(problem_, outcome_.lower_bound.late_jobs == problem_.size());
    int round = 0;
    while (!done()) {
      const double now = std::min(share(), 1.0);
      if (round_at(now) != round && found_) {
        for (Annealer& chain : chains_) chain.load(outcome_.plan);
      }
      round = round_at(now);
      anneal(temperature_at(now, heat));
      take_best();
    }
    if (found_) {
      outcome_.cost = cost_of(problem_, outcome_.plan);
      outcome_.status = outcome_.objective == outcome_.least_objective ? Status::optimal : Status::feasible;
    }
    return std::move(outcome_);
  }

 private:
  bool asked_to_stop() const { return options_.keep_going && !options_.keep_going(); }
  double share() const {
    const double by_work = static_cast<double>(outcome_.work) / static_cast<double>(options_.work);
    return options_.share_used ? std::max(by_work, options_.share_used()) : by_work;
  }
  bool done() const {
    return (found_ && outcome_.objective == outcome_.least_objective) || asked_to_stop() || share() >= 1;
  }

  // Both chains make the same number of moves, a two-hundredth of the work at most.
  void anneal(double temperature) {
    const std::int64_t chain_moves = options_.work / (2 * steps_per_move);
    const std::int64_t moves = std::clamp<std::int64_t>(chain_moves / 200, 1, most_moves_between_meetings);
    const std::array<std::function<void()>, 2> tasks = {
        [&] { chains_[0].run(moves, temperature, options_.keep_going); },
        [&] { chains_[1].run(moves, temperature, options_.keep_going); }};
    if (options_.executor) {
      options_.executor(tasks);
    } else {
      for (const auto& task : tasks) task();
    }
    outcome_.work += 2 * steps_per_move * moves;
  }

  void take_best() {
    for (const Annealer& chain : chains_) {
      if (!chain.found() || (found_ && chain.best_cost() >= outcome_.objective)) continue;
      found_ = true;
      outcome_.plan = chain.best();
      outcome_.objective = chain.best_cost();
      if (options_.on_progress) options_.on_progress(outcome_.objective, outcome_.least_objective);
    }
  }

  const BatchProblem& problem_;
  const BatchSearchOptions& options_;
  std::array<Annealer, 2> chains_;
  BatchOutcome outcome_;
  bool found_ = false;
};

}  // namespace

Result<BatchOutcome> solve(const BatchProblem& problem, const BatchSearchOptions& options) {
  Problems found = faults(problem);
  if (!found.empty()) return found;
  return Search(problem, options).run();
}

}  // namespace dampward::solver
