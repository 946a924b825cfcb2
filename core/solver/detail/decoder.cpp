#include "core/solver/detail/decoder.h"

#include <algorithm>
#include <functional>
#include <limits>

namespace dampward::solver::detail {
namespace {

constexpr int never = std::numeric_limits<int>::max();

// Whether, of two in one block, the first is placed before the second.
bool before(int there, int back) {
  return there > 0 || (there == 0 && back < 0);
}

}  // namespace

Decoder::Decoder(const Problem& problem)
    : problem_(problem),
      earliest_(solver::earliest_starts(problem).starts),
      distances_(problem, earliest_, blocks_of(problem)),
      out_(problem.operations.size()),
      waits_for_(problem.operations.size(), 0),
      profile_(problem) {
  const Blocks& blocks = distances_.blocks();
  for (const Arc& arc : problem.arcs) {
    if (blocks.of[arc.from] == blocks.of[arc.to]) continue;
    out_[arc.from].push_back({arc.to, arc.lag});
    ++waits_for_[arc.to];
  }
  for (int i = 0; i < problem.size(); ++i) {
    const auto& members = blocks.members[blocks.of[i]];
    if (members.size() == 1) continue;
    has_longest_gaps_ = true;
    for (std::size_t k = 0; k < members.size(); ++k) {
      if (before(distances_.from(i)[k], distances_.to(i)[k])) ++waits_for_[members[k]];
    }
  }
}

void Decoder::offer(int operation) {
  eligible_.push_back({keys_[operation], operation});
  std::push_heap(eligible_.begin(), eligible_.end(), std::greater<>());
}

int Decoder::take_next() {
  std::pop_heap(eligible_.begin(), eligible_.end(), std::greater<>());
  const int operation = eligible_.back().second;
  eligible_.pop_back();
  return operation;
}

void Decoder::reset(const std::vector<int>& keys) {
  keys_ = keys;
  released_ = earliest_;
  start_.assign(keys.size(), -1);
  placed_.clear();
  profile_.clear();
  rewind(0);
}

// Takes back all placements but the first `kept`, and works out anew what the kept ones leave open.
void Decoder::rewind(std::size_t kept) {
  for (std::size_t k = kept; k < placed_.size(); ++k) {
    profile_.remove(placed_[k], start_[placed_[k]]);
    start_[placed_[k]] = -1;
  }
  placed_.resize(kept);
  waiting_ = waits_for_;
  first_ = released_;
  if (has_longest_gaps_) last_.assign(keys_.size(), never);
  eligible_.clear();
  for (const int operation : placed_) fix(operation, start_[operation]);
  eligible_.clear();
  for (int i = 0; i < problem_.size(); ++i) {
    if (waiting_[i] == 0 && start_[i] < 0) offer(i);
  }
}

// Tells all others where an operation stands.
void Decoder::fix(int operation, int start) {
  for (const Out& arc : out_[operation]) {
    first_[arc.to] = std::max(first_[arc.to], start + arc.lag);
    if (--waiting_[arc.to] == 0) offer(arc.to);
  }
  const auto& members = distances_.blocks().members[distances_.blocks().of[operation]];
  if (members.size() == 1) return;
  const int *there = distances_.from(operation), *back = distances_.to(operation);
  for (std::size_t k = 0; k < members.size(); ++k) {
    const int other = members[k];
    first_[other] = std::max(first_[other], start + there[k]);
    last_[other] = std::min(last_[other], start - back[k]);
    if (before(there[k], back[k]) && --waiting_[other] == 0 && start_[other] < 0) offer(other);
  }
}

void Decoder::put(int operation, int start) {
  start_[operation] = start;
  placed_.push_back(operation);
  profile_.place(operation, start);
  fix(operation, start);
}

// The operation fits only after its last start: it and what hangs on it in its block are released later, and placing goes on
// from before the first that moves.
void Decoder::make_room(int operation, int start) {
  const auto& members = distances_.blocks().members[distances_.blocks().of[operation]];
  const int* there = distances_.from(operation);
  for (std::size_t k = 0; k < members.size(); ++k) {
    released_[members[k]] = std::max(released_[members[k]], start + there[k]);
  }
  std::size_t kept = 0;
  while (kept < placed_.size() && start_[placed_[kept]] >= released_[placed_[kept]]) ++kept;
  rewind(kept);
}

bool Decoder::decode(const std::vector<int>& keys, Starts& starts) {
  reset(keys);
  int rooms_left = 20 + problem_.size() / 2;
  while (placed_.size() < keys.size()) {
    const int operation = take_next();
    const int start = profile_.earliest_fit(operation, first_[operation]);
    ++work_;
    if (!has_longest_gaps_ || start <= last_[operation]) {
      put(operation, start);
    } else if (rooms_left-- > 0) {
      make_room(operation, start);
    } else {
      return false;
    }
  }
  starts = start_;
  const int shift = *std::min_element(starts.begin(), starts.end());
  for (int& s : starts) s -= shift;
  return true;
}

}  // namespace dampward::solver::detail
