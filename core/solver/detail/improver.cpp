#include "core/solver/detail/improver.h"

namespace dampward::solver::detail {

Improver::Improver(const Problem& problem, const Starts& earliest, std::uint64_t seed)
    : population_(problem, earliest, seed), neighbourhood_(problem, earliest, seed + 1) {}

void Improver::run(std::int64_t work, const std::function<bool()>& keep_going, int lower_bound) {
  const std::int64_t half = best_.empty() ? work : work / 2;
  population_.run(half, keep_going, lower_bound);
  if (population_.best()) take(*population_.best());
  if (best_.empty() || half == work) return;
  if (neighbourhood_.run(best_, work - half, keep_going, lower_bound)) population_.join(best_);
}

void Improver::join(const Starts& starts) {
  if (!best_.empty() && best_.back() <= starts.back()) return;
  best_ = starts;
  population_.join(starts);
}

}  // namespace dampward::solver::detail
