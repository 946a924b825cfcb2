#include "core/solver/detail/prover.h"

#include <algorithm>

namespace dampward::solver::detail {
Prover::Prover(const Problem& problem, const Starts& earliest)
    : kernel_(problem, widest_windows(problem, earliest)) {}

void Prover::run(std::int64_t work, const std::function<bool()>& keep_going, int lower_bound) {
  kernel_.ask(&keep_going);
  const bool from_below = turns_++ % 3 == 1;
  const std::int64_t end = kernel_.work() + work;
  while (!exhausted_ && kernel_.work() < end) {
    std::optional<int> at;
    if (from_below && !best_.empty()) at = std::max(lower_bound, kernel_.least_last());
    const Kernel::Verdict verdict = kernel_.search(end - kernel_.work(), at);
    if (verdict == Kernel::Verdict::plan) {
      best_ = kernel_.starts();
      kernel_.require_last_by(best_.back() - 1);
      if (best_.back() <= std::max(lower_bound, kernel_.least_last())) break;
    } else if (verdict == Kernel::Verdict::none) {
      exhausted_ = true;
    } else if (verdict == Kernel::Verdict::stopped) {
      break;
    }
  }
  kernel_.ask(nullptr);
}

void Prover::join(const Starts& starts) {
  if (!best_.empty() && best_.back() <= starts.back()) return;
  best_ = starts;
  kernel_.lean_to(starts);
  kernel_.require_last_by(starts.back() - 1);
}

}  // namespace dampward::solver::detail
