#pragma once

#include <vector>

#include "core/solver/detail/trail.h"

namespace dampward::solver::detail {

// Learned clauses: of the literals of each, one holds. Two of them are watched (Moskewicz et al. 2001); a watch tells from which
// bound on its literal fails.
class Clauses {
 public:
  // The literals must be two or more, the first two the last ones to fail. Returns the clause's number.
  int add(std::span<const Literal> literals, int distinct_levels, int variables);
  // What follows from an entry of the trail. False: a contradiction, told by the trail.
  bool propagate(Trail& trail, const Trail::Entry& entry);
  // The literals that made the clause's first one hold, as what holds.
  void explain(int clause, std::vector<Literal>& because) const;

  void bump(int clause);
  void decay() { step_ *= 1.0f / 0.999f; }
  int learned() const { return alive_; }
  // Drops what facts satisfy, and the half of the rest that has been of least use. Only at level 0, all settled.
  void reduce(const Trail& facts);
  // Steps done so far, as a measure of work.
  long long work() const { return work_; }

 private:
  struct Clause {
    int begin, size;
    int distinct_levels;
    float activity;
  };
  struct Watch {
    int fails_from;  // bound of the watching view
    int clause;
    Literal other;  // some other literal of the clause: if it holds, all is well
  };
  void watch(int clause, Literal literal, Literal other);
  void rescale();

  std::vector<Literal> pool_;
  std::vector<Clause> clauses_;
  std::vector<std::vector<Watch>> watches_;  // by the view whose rise makes a literal fail
  int alive_ = 0;
  float step_ = 1;
  long long work_ = 0;
};

}  // namespace dampward::solver::detail
