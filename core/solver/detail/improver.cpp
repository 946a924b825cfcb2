#include "core/solver/detail/improver.h"

#include <algorithm>

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
  const std::int64_t breeding = best_.empty() ? work : work_for_breeding(work);
  population_.run(breeding, keep_going, lower_bound);
  const bool bred = population_.best() && !best_.empty() && population_.best()->back() < best_.back();
  if (population_.best()) take(*population_.best());
  if (best_.empty() || breeding == work) return;
  const bool pieced = neighbourhood_.run(best_, work - breeding, keep_going, lower_bound);
  if (pieced) population_.join(best_);
  bred_ = 0.9 * bred_ + (bred ? 1 : 0.02);
  pieced_ = 0.9 * pieced_ + (pieced ? 1 : 0.02);
}

std::int64_t Improver::work_for_breeding(std::int64_t work) const {
  const double share = std::clamp(bred_ / (bred_ + pieced_), 0.15, 0.85);
  return static_cast<std::int64_t>(share * static_cast<double>(work));
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
