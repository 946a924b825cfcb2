#include "core/solver/detail/annealer.h"

#include "core/solver/detail/batch_moves.h"

namespace dampward::solver::detail {
namespace {

double uniform(Random& random) {
  return static_cast<double>(random.next() >> 11) * 0x1p-53;
}

// Exponentially distributed with mean 1, from comparisons alone (von Neumann 1951): a logarithm may differ in its last digit from
// one machine to the next.
double exponential(Random& random) {
  for (int whole = 0;; ++whole) {
    const double first = uniform(random);
    bool odd = true;
    double before = first;
    for (double next; (next = uniform(random)) <= before; before = next) odd = !odd;
    if (odd) return whole + first;
  }
}

}  // namespace

void Annealer::remember() {
  if (!state_.complete() || (found_ && state_.cost() >= best_cost_)) return;
  found_ = true;
  best_cost_ = state_.cost();
  best_ = state_.plan();
}

void Annealer::load(const BatchPlan& plan) {
  state_.load(plan);
  remember();
}

void Annealer::run(std::int64_t moves, double temperature, const std::function<bool()>& keep_going) {
  constexpr std::int64_t between_questions = 1024;
  for (std::int64_t k = 0; k < moves; ++k) {
    if (k % between_questions == 0 && keep_going && !keep_going()) break;
    if (!random_move(state_, random_)) continue;
    // What is worse by w is kept with probability exp(-w / temperature).
    const auto most = static_cast<std::int64_t>(temperature * exponential(random_));
    const std::int64_t before = state_.kept_cost();
    if (!state_.retime(most) || state_.cost() - before > most) {
      state_.take_back();
      continue;
    }
    const bool better = state_.cost() < before;
    state_.keep();
    if (better) remember();
  }
}

}  // namespace dampward::solver::detail
