#pragma once

#include <vector>

#include "core/solver/detail/trail.h"

namespace dampward::solver::detail {

// Arcs between variables, y >= x + lag, some of them only while a condition holds; a condition whose arc cannot be kept fails.
// A ring of arcs that would lift its variables round and round is found early, and its conditions alone are to blame.
class Gaps {
 public:
  void add(int from, int to, int lag) { add(from, to, lag, {-1, 0}); }
  void add(int from, int to, int lag, Literal condition);

  // Everything that the arcs force from the start. False: a contradiction.
  bool start(Trail& trail);
  bool propagate(Trail& trail, const Trail::Entry& entry);
  // At level 0: forgets arcs whose condition fails for good.
  void tidy(const Trail& facts);
  // What made `literal`, the target of the arc, hold.
  void explain(int arc, Literal literal, std::vector<Literal>& because) const;
  long long work() const { return work_; }

 private:
  struct Edge {
    View from, to;
    int lag;
    Literal condition;  // view -1: none
    int number;
  };
  bool follow(Trail& trail, const Edge& edge, int from);
  bool lifted_often(const Trail& trail, View view);
  bool ring(Trail& trail, View view);

  std::vector<Edge> edges_;
  // Copies side by side, by the view they leave, and by that of their condition.
  std::vector<std::vector<Edge>> leaving_, conditioned_;
  std::vector<int> lifted_;        // by view: how often
  std::vector<int> lifted_since_;  // since the trail was so long
  std::vector<Literal> because_;
  long long work_ = 0;
};

}  // namespace dampward::solver::detail
