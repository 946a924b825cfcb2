#include "core/solver/detail/trail.h"

namespace dampward::solver::detail {

int Trail::new_variable(int low, int high) {
  lower_.push_back(low);
  lower_.push_back(-high);
  last_.insert(last_.end(), 2, -1);
  return variables() - 1;
}

bool Trail::push(Literal literal, Reason reason) {
  const int old = lower_[literal.view];
  if (old >= literal.bound) return true;
  if (fails(literal)) {
    failure_ = {literal, reason};
    return false;
  }
  entries_.push_back({literal.view, old, literal.bound, last_[literal.view], level(), reason});
  last_[literal.view] = size() - 1;
  lower_[literal.view] = literal.bound;
  return true;
}

Reason Trail::store(std::span<const Literal> literals) {
  const int at = static_cast<int>(pool_.size());
  pool_.push_back({-1, static_cast<int>(literals.size())});
  pool_.insert(pool_.end(), literals.begin(), literals.end());
  return {Because::stored, at};
}

bool Trail::contradict(Reason reason) {
  failure_ = {{-1, 0}, reason};
  return false;
}

void Trail::new_level() {
  levels_.push_back({size(), pool_.size()});
}

void Trail::back_to(int level) {
  if (level >= this->level()) return;
  const Level& kept = levels_[level];
  for (int index = size() - 1; index >= kept.entries; --index) {
    const Entry& entry = entries_[index];
    lower_[entry.view] = entry.old_bound;
    last_[entry.view] = entry.previous;
  }
  entries_.resize(kept.entries);
  pool_.resize(kept.pool);
  levels_.resize(level);
}

void Trail::settle() {
  for (const Entry& entry : entries_) last_[entry.view] = -1;
  entries_.clear();
  pool_.clear();
}

int Trail::since(Literal literal) const {
  int index = last_[literal.view];
  while (index >= 0 && entries_[index].old_bound >= literal.bound) index = entries_[index].previous;
  return index;
}

}  // namespace dampward::solver::detail
