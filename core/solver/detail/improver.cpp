#include "core/solver/detail/improver.h"

namespace dampward::solver::detail {
namespace {

constexpr std::int64_t patience = 1'000'000;  // of breeding without any plan
constexpr std::int64_t work_of_a_block = 2'000'000;

}  // namespace

Improver::Improver(const Problem& problem, const Starts& earliest, std::uint64_t seed)
    : problem_(problem),
      earliest_(earliest),
      population_(problem, earliest, seed),
      neighbourhood_(problem, earliest, seed + 1),
      builder_(problem, seed + 2) {}

void Improver::run(std::int64_t work, const std::function<bool()>& keep_going, int lower_bound) {
  if (best_.empty() && population_.work() > patience) {
    look_for_first(work, keep_going);
    return;
  }
  const std::int64_t half = best_.empty() ? work : work / 2;
  population_.run(half, keep_going, lower_bound);
  if (population_.best()) take(*population_.best());
  if (best_.empty() || half == work) return;
  if (neighbourhood_.run(best_, work - half, keep_going, lower_bound)) population_.join(best_);
}

void Improver::look_for_first(std::int64_t work, const std::function<bool()>& keep_going) {
  if (!built_) {
    built_ = true;
    const Starts glued = builder_.build(work_of_a_block, keep_going);
    if (!glued.empty()) take(glued);
    return;
  }
  if (!scout_) {
    scout_ = std::make_unique<Kernel>(problem_, widest_windows(problem_, earliest_));
    scout_->settle_orders(problem_, BlockDistances(problem_, earliest_, widest_blocks(problem_)));
    scout_->choose_by_activity_alone();
  }
  scout_->ask(&keep_going);
  if (scout_->search(work) == Kernel::Verdict::plan) take(scout_->starts());
}

void Improver::join(const Starts& starts) {
  if (!best_.empty() && best_.back() <= starts.back()) return;
  best_ = starts;
  population_.join(starts);
}

}  // namespace dampward::solver::detail
