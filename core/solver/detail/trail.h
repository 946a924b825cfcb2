#pragma once

#include <span>
#include <vector>

namespace dampward::solver::detail {

// A variable x has two views: 2x is x itself, 2x + 1 is -x. A bound from above is a bound from below of the other view, so that
// every rule is written once.
using View = int;
inline View view_of(int variable) {
  return 2 * variable;
}
inline View negative(View view) {
  return view ^ 1;
}

// "The view is at least bound."
struct Literal {
  View view = 0;
  int bound = 0;
  friend bool operator==(const Literal&, const Literal&) = default;
};
// "It is less."
inline Literal opposite(Literal literal) {
  return {negative(literal.view), 1 - literal.bound};
}
inline Literal at_least(int variable, int bound) {
  return {view_of(variable), bound};
}
inline Literal at_most(int variable, int bound) {
  return {negative(view_of(variable)), -bound};
}

// Why a literal holds: nothing (a decision or a fact), a clause, an arc, or literals set down when it was found.
enum class Because { nothing, clause, arc, stored };
struct Reason {
  Because kind = Because::nothing;
  int at = 0;
};

// The bounds of all variables, every change of them with its reason, and the way back.
class Trail {
 public:
  struct Entry {
    View view;
    int old_bound, bound;
    int previous;  // the entry before of the same view, -1: none
    int level;
    Reason reason;
  };

  int new_variable(int low, int high);
  int variables() const { return static_cast<int>(lower_.size()) / 2; }

  int lower(View view) const { return lower_[view]; }
  int upper(View view) const { return -lower_[negative(view)]; }
  bool holds(Literal literal) const { return lower_[literal.view] >= literal.bound; }
  bool fails(Literal literal) const { return lower_[negative(literal.view)] >= 1 - literal.bound; }
  bool fixed(int variable) const { return lower_[2 * variable] + lower_[2 * variable + 1] == 0; }

  // Makes the literal hold. False: it contradicts what holds, and failure() says so.
  bool push(Literal literal, Reason reason);
  // Literals that together force another, or that cannot hold together; valid until the level is left.
  Reason store(std::span<const Literal> literals);
  std::span<const Literal> stored(int at) const {
    return {pool_.data() + at + 1, static_cast<std::size_t>(pool_[at].bound)};
  }
  // The stored literals, all of which hold, cannot hold together.
  bool contradict(Reason reason);

  // What went wrong last: the literal that could not be pushed and its reason; view -1: the stored literals of the reason.
  struct Failure {
    Literal literal;
    Reason reason;
  };
  const Failure& failure() const { return failure_; }

  int level() const { return static_cast<int>(levels_.size()); }
  void new_level();
  void back_to(int level);
  // At level 0: all that holds becomes fact, and needs no reason any more.
  void settle();

  // The entry since which the literal holds; -1: it is a fact. The literal holds.
  int since(Literal literal) const;
  const Entry& entry(int index) const { return entries_[index]; }
  int size() const { return static_cast<int>(entries_.size()); }
  // Where the entries after the level begin.
  int end_of(int level) const { return level < this->level() ? levels_[level].entries : size(); }
  int level_begin() const { return levels_.empty() ? 0 : levels_.back().entries; }
  int level_since(Literal literal) const {
    const int index = since(literal);
    return index < 0 ? 0 : entries_[index].level;
  }

 private:
  struct Level {
    int entries;
    std::size_t pool;
  };
  std::vector<int> lower_, last_;  // by view
  std::vector<Entry> entries_;
  std::vector<Level> levels_;
  std::vector<Literal> pool_;  // each list behind a head whose bound is its length
  Failure failure_;
};

}  // namespace dampward::solver::detail
