#include "core/solver/detail/clauses.h"

#include <algorithm>

namespace dampward::solver::detail {

void Clauses::watch(int clause, Literal literal, Literal other) {
  const Literal failing = opposite(literal);
  watches_[failing.view].push_back({failing.bound, clause, other});
}

int Clauses::add(std::span<const Literal> literals, int distinct_levels, int variables) {
  watches_.resize(2 * static_cast<std::size_t>(variables));
  const int number = static_cast<int>(clauses_.size());
  clauses_.push_back(
      {static_cast<int>(pool_.size()), static_cast<int>(literals.size()), distinct_levels, step_});
  pool_.insert(pool_.end(), literals.begin(), literals.end());
  watch(number, literals[0], literals[1]);
  watch(number, literals[1], literals[0]);
  ++alive_;
  return number;
}

bool Clauses::propagate(Trail& trail, const Trail::Entry& entry) {
  if (static_cast<std::size_t>(entry.view) >= watches_.size()) return true;
  std::vector<Watch>& list = watches_[entry.view];
  const int old_bound = entry.old_bound, bound = entry.bound;
  const View failing = negative(entry.view);
  work_ += static_cast<long long>(list.size() / 8);
  std::size_t kept = 0, k = 0;
  bool consistent = true;
  while (k < list.size()) {
    Watch one = list[k++];
    if (one.fails_from > bound || one.fails_from <= old_bound || trail.holds(one.other)) {
      list[kept++] = one;
      continue;
    }
    ++work_;
    const Clause& clause = clauses_[one.clause];
    Literal* literals = pool_.data() + clause.begin;
    if (literals[0].view == failing) std::swap(literals[0], literals[1]);
    if (trail.holds(literals[0])) {
      one.other = literals[0];
      list[kept++] = one;
      continue;
    }
    int next = 2;
    while (next < clause.size && trail.fails(literals[next])) ++next;
    if (next < clause.size) {
      std::swap(literals[1], literals[next]);
      watch(one.clause, literals[1], literals[0]);
      continue;
    }
    list[kept++] = one;
    if (!trail.push(literals[0], {Because::clause, one.clause})) {
      consistent = false;
      break;
    }
  }
  while (k < list.size()) list[kept++] = list[k++];
  list.resize(kept);
  return consistent;
}

void Clauses::explain(int clause, std::vector<Literal>& because) const {
  const Clause& one = clauses_[clause];
  for (int k = 1; k < one.size; ++k) because.push_back(opposite(pool_[one.begin + k]));
}

void Clauses::bump(int clause) {
  clauses_[clause].activity += step_;
  if (clauses_[clause].activity > 1e20f) rescale();
}

void Clauses::rescale() {
  for (Clause& clause : clauses_) clause.activity *= 1e-20f;
  step_ *= 1e-20f;
}

void Clauses::reduce(const Trail& facts) {
  std::vector<int> order;
  for (int c = 0; c < static_cast<int>(clauses_.size()); ++c) {
    if (clauses_[c].size > 2 && clauses_[c].distinct_levels > 2) order.push_back(c);
  }
  std::sort(order.begin(), order.end(), [&](int a, int b) {
    const Clause &x = clauses_[a], &y = clauses_[b];
    return x.activity != y.activity ? x.activity < y.activity : a < b;
  });
  std::vector<char> drop(clauses_.size(), 0);
  for (std::size_t c = 0; c < clauses_.size(); ++c) {
    for (int k = 0; k < clauses_[c].size && !drop[c]; ++k)
      drop[c] = facts.holds(pool_[clauses_[c].begin + k]);
  }
  for (std::size_t k = 0; k < order.size() / 2; ++k) drop[order[k]] = 1;

  std::vector<Literal> pool;
  std::vector<Clause> clauses;
  for (auto& list : watches_) list.clear();
  for (std::size_t c = 0; c < clauses_.size(); ++c) {
    if (drop[c]) continue;
    Clause clause = clauses_[c];
    const auto from = pool_.begin() + clause.begin;
    clause.begin = static_cast<int>(pool.size());
    pool.insert(pool.end(), from, from + clause.size);
    const int number = static_cast<int>(clauses.size());
    clauses.push_back(clause);
    watch(number, pool[clause.begin], pool[clause.begin + 1]);
    watch(number, pool[clause.begin + 1], pool[clause.begin]);
  }
  pool_ = std::move(pool);
  clauses_ = std::move(clauses);
  alive_ = static_cast<int>(clauses_.size());
}

}  // namespace dampward::solver::detail
