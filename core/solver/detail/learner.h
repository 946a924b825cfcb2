#pragma once

#include <vector>

#include "core/solver/detail/activity.h"
#include "core/solver/detail/clauses.h"
#include "core/solver/detail/gaps.h"
#include "core/solver/detail/trail.h"

namespace dampward::solver::detail {

// Turns a contradiction into a clause that would have foreseen it: back to the first unique implication point (Marques-Silva and
// Sakallah 1999; Zhang et al. 2001), less what the rest implies (Sörensson and Biere 2009).
class Learner {
 public:
  Learner(const Trail& trail, Clauses& clauses, const Gaps& gaps, Activity& activity)
      : trail_(trail), clauses_(clauses), gaps_(gaps), activity_(activity) {}

  // Takes down the trail's failure. Returns the level at which it became certain, which may be below the trail's own.
  int take_failure();
  // Learns from it; the trail is at the level that take_failure() returned, and not at 0. The clause's first literal is the one
  // that follows at level().
  void learn();
  const std::vector<Literal>& clause() const { return clause_; }
  int level() const { return level_; }
  int distinct_levels() const { return distinct_levels_; }
  long long work() const { return work_; }

 private:
  struct Need {
    int bound = 0;
    int since = -1;  // index in the trail; -1: not needed
    bool touched = false;
  };
  void explain(Literal literal, Reason reason);
  void need(Literal literal);
  bool implied(Literal literal, const Need& by);
  void write_down(Literal last);

  const Trail& trail_;
  Clauses& clauses_;
  const Gaps& gaps_;
  Activity& activity_;
  std::vector<Need> needs_;  // by view: of several bounds of a view the strongest stands for all
  std::vector<View> touched_;
  std::vector<Literal> failing_, because_, clause_;
  std::vector<int> levels_;
  int begin_ = 0, open_ = 0;  // where the level begins in the trail, and how many needs stem from it
  int level_ = 0, distinct_levels_ = 0;
  long long work_ = 0;
};

}  // namespace dampward::solver::detail
