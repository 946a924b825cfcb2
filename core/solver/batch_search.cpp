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

// Where a share of the search falls: which of the coolings, and how hot.
struct Heat {
  int round = 0;
  double temperature = 0;
};

// The first cooling takes 60 % from as hot as three late jobs in ten, the two that follow 20 % each from a twentieth of it; all
// end where a unit of the cheapest term is refused.
// Tried on the set of Lackner et al.: hotter or shorter first coolings lose on 250 and 500 jobs.
Heat heat_at(double share, const BatchProblem& problem) {
  const BatchWeights& w = problem.weights;
  int cheapest = std::max({w.run_time, w.late_jobs, w.setup_cost, w.setup_time, 1});
  for (const int one : {w.run_time, w.late_jobs, w.setup_cost, w.setup_time}) {
    if (one > 0) cheapest = std::min(cheapest, one);
  }
  constexpr double first = 0.6, second = 0.8;
  const int round = share < first ? 0 : share < second ? 1 : 2;
  const double begun = round == 0 ? 0 : round == 1 ? first : second;
  const double done = (share - begun) / (round == 0 ? first : round == 1 ? second - first : 1 - second);
  const double cold = 0.3 * cheapest;
  const double hot = std::max(0.3 * std::max(w.late_jobs, w.run_time) * (round == 0 ? 1.0 : 0.05), cold);
  return {round, hot * power(cold / hot, std::clamp(done, 0.0, 1.0))};
}

class Search {
 public:
  Search(const BatchProblem& problem, const BatchSearchOptions& options)
      : problem_(problem),
        options_(options),
        chains_{Annealer(problem, 2 * options.seed), Annealer(problem, 2 * options.seed + 1)} {
    outcome_.lower_bound = batch_lower_bound(problem);
    outcome_.least_objective = weighted(problem.weights, outcome_.lower_bound);
  }

  BatchOutcome run() {
    detail::BatchState first(problem_);
    detail::build(first);
    for (Annealer& chain : chains_) chain.load(first.plan());
    take_best();
    int round = 0;
    while (!done()) {
      const Heat heat = heat_at(share(), problem_);
      if (heat.round != round && found_) {
        for (Annealer& chain : chains_) chain.load(outcome_.plan);
      }
      round = heat.round;
      anneal(heat.temperature);
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
