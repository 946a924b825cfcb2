#include "core/solver/detail/learner.h"

#include <algorithm>

namespace dampward::solver::detail {

void Learner::explain(Literal literal, Reason reason) {
  because_.clear();
  switch (reason.kind) {
    case Because::nothing:
      break;
    case Because::clause:
      clauses_.explain(reason.at, because_);
      break;
    case Because::arc:
      gaps_.explain(reason.at, literal, because_);
      break;
    case Because::stored: {
      const auto stored = trail_.stored(reason.at);
      because_.assign(stored.begin(), stored.end());
      break;
    }
  }
  work_ += static_cast<long long>(because_.size()) / 2 + 1;
}

void Learner::need(Literal literal) {
  Need& known = needs_[literal.view];
  if (known.since >= 0 && known.bound >= literal.bound) return;
  const int since = trail_.since(literal);
  if (since < 0) return;  // a fact
  activity_.bump_met(literal);
  if (!known.touched) touched_.push_back(literal.view);
  if (since >= begin_ && known.since < begin_) ++open_;
  known = {literal.bound, since, true};
}

int Learner::take_failure() {
  const Trail::Failure& failure = trail_.failure();
  explain(failure.literal, failure.reason);
  failing_ = because_;
  if (failure.literal.view >= 0) failing_.push_back(opposite(failure.literal));
  if (failure.reason.kind == Because::clause) clauses_.bump(failure.reason.at);
  int newest = 0;
  for (const Literal literal : failing_) newest = std::max(newest, trail_.level_since(literal));
  return newest;
}

// Whether other needs, all older on the trail, imply this one.
bool Learner::implied(Literal literal, const Need& by) {
  const Reason reason = trail_.entry(by.since).reason;
  if (reason.kind == Because::nothing) return false;
  explain(literal, reason);
  return std::all_of(because_.begin(), because_.end(), [&](Literal l) {
    const Need& other = needs_[l.view];
    if (l.view != literal.view && other.since >= 0 && other.since < by.since && other.bound >= l.bound)
      return true;
    return trail_.since(l) < 0;
  });
}

void Learner::write_down(Literal last) {
  clause_.assign(1, opposite(last));
  levels_.clear();
  std::size_t second = 0;
  level_ = 0;
  std::vector<Literal> rest;
  for (const View view : touched_) {
    const Need& one = needs_[view];
    if (one.since >= 0 && view != last.view) rest.push_back({view, one.bound});
  }
  std::sort(rest.begin(), rest.end(),
            [&](Literal a, Literal b) { return needs_[a.view].since > needs_[b.view].since; });
  for (const Literal literal : rest) {
    const Need& one = needs_[literal.view];
    if (implied(literal, one)) continue;
    const int level = trail_.entry(one.since).level;
    levels_.push_back(level);
    if (level > level_) {
      level_ = level;
      second = clause_.size();
    }
    clause_.push_back(opposite(literal));
  }
  if (second > 1) std::swap(clause_[1], clause_[second]);
  std::sort(levels_.begin(), levels_.end());
  distinct_levels_ = 1 + static_cast<int>(std::unique(levels_.begin(), levels_.end()) - levels_.begin());
}

void Learner::learn() {
  needs_.resize(2 * static_cast<std::size_t>(trail_.variables()));
  begin_ = trail_.level_begin();
  open_ = 0;
  touched_.clear();
  for (const Literal literal : failing_) need(literal);
  Literal last;
  for (int index = trail_.size() - 1;; --index) {
    const Trail::Entry& entry = trail_.entry(index);
    Need& one = needs_[entry.view];
    if (one.since != index) continue;
    last = {entry.view, one.bound};
    if (open_ == 1) break;
    one.since = -1;
    --open_;
    explain(last, entry.reason);
    if (entry.reason.kind == Because::clause) clauses_.bump(entry.reason.at);
    for (const Literal literal : because_) need(literal);
  }
  write_down(last);
  for (const View view : touched_) needs_[view] = {};
  for (const Literal literal : clause_) activity_.bump_learned(literal);
  activity_.decay();
  clauses_.decay();
}

}  // namespace dampward::solver::detail
