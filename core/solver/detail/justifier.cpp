#include "core/solver/detail/justifier.h"

namespace dampward::solver::detail {

bool Justifier::plan(const std::vector<int>& keys, Starts& starts) {
  if (!forwards_.decode(keys, starts) || starts.front() != 0) return false;
  Starts better = starts;
  while (round(better) && better.back() < starts.back()) starts = better;
  return true;
}

// To the right, last end first, and back to the left, first start first.
bool Justifier::round(Starts& starts) {
  keys_.resize(starts.size());
  for (std::size_t i = 0; i < starts.size(); ++i) keys_[i] = -starts[i] - problem_.operations[i].duration;
  if (!backwards_.decode(keys_, packed_)) return false;
  for (std::size_t i = 0; i < starts.size(); ++i) keys_[i] = -packed_[i] - problem_.operations[i].duration;
  return forwards_.decode(keys_, starts) && starts.front() == 0;
}

}  // namespace dampward::solver::detail
