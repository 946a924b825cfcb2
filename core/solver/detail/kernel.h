#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <utility>
#include <vector>

#include "core/solver/detail/activity.h"
#include "core/solver/detail/clauses.h"
#include "core/solver/detail/distances.h"
#include "core/solver/detail/energy_check.h"
#include "core/solver/detail/gaps.h"
#include "core/solver/detail/learner.h"
#include "core/solver/detail/time_table.h"
#include "core/solver/detail/trail.h"
#include "core/solver/problem.h"

namespace dampward::solver::detail {

// When each operation may start, both ends included.
using Windows = std::vector<std::pair<int, int>>;
// From the earliest start to where some best plan has started everything.
Windows widest_windows(const Problem& problem, const Starts& earliest);

// Complete search by lazy clause generation (Ohrimenko, Stuckey and Codish 2009; Schutt, Feydy, Stuckey and Wallace 2011 for this
// family of problems): constraints propagate bounds and explain them, conflicts become clauses.
class Kernel {
 public:
  enum class Verdict {
    plan,     // starts() keeps everything asked for
    none,     // there is no plan within what is required
    refuted,  // there is none with the last operation as early as was tried; the bound is raised
    stopped,  // the work was used up
  };

  // The problem has no faults, its arcs no positive cycle. `free`, by operation: the others are in an order already, so that no
  // two of them need be told apart.
  Kernel(const Problem& problem, const Windows& windows, const std::vector<char>* free = nullptr);

  // Longest paths of the same problem: orders that they rule out are settled at once.
  void settle_orders(const Problem& problem, const BlockDistances& distances);
  // From now on the last operation must start by then.
  void require_last_by(int time);
  // Goes on searching until a verdict or until so much more work is done. `try_last_by`: as if that were required too, for this
  // time only.
  Verdict search(std::int64_t work, std::optional<int> try_last_by = std::nullopt);

  const Starts& starts() const { return starts_; }
  // Proven: the last operation cannot start earlier.
  int least_last() const { return trail_.level() == 0 ? trail_.lower(view_of(last_)) : least_last_; }
  // Starts that choices lean to, such as those of a plan.
  void lean_to(const Starts& starts);
  // From now on choices never go by start time while any bound was in a conflict: another way through the same tree.
  void choose_by_activity_alone() { by_activity_alone_ = true; }
  // Asked now and then; false ends the search with `stopped`.
  void ask(const std::function<bool()>* keep_going) { keep_going_ = keep_going; }
  std::int64_t work() const;
  std::int64_t conflicts() const { return conflicts_; }

 private:
  void add_arcs(const Problem& problem);
  void add_resources(const Problem& problem);
  void add_orders(const Problem& problem, const std::vector<char>* free);
  bool propagate();
  bool check_energy();
  bool resolve();
  void restart();
  void back_to(int level);
  bool decide();
  Literal by_start_time();
  std::optional<Literal> by_activity();
  bool leans(int variable, int bound) const;
  void keep_plan();

  Trail trail_;
  Gaps gaps_;
  Clauses clauses_;
  Activity activity_;
  Learner learner_;
  std::vector<TimeTable> tables_;
  struct Place {
    int table, task;
  };
  std::vector<std::vector<Place>> tables_of_;  // by variable
  std::vector<int> due_;                       // tables to be looked at
  std::vector<char> is_due_;
  std::vector<EnergyCheck> checks_;  // one for each table
  std::vector<char> check_is_due_;
  struct Order {
    int first, second, variable;  // 1: the first goes before the second
  };
  std::vector<Order> orders_;
  int operations_, last_;
  int head_ = 0;
  bool contradiction_ = false;  // of the facts
  bool started_ = false, tidy_ = false, from_below_ = false;
  int least_last_ = 0;

  Starts starts_;
  std::vector<int> leaning_;  // by variable
  bool leans_to_plan_ = false, by_activity_alone_ = false;
  std::int64_t conflicts_ = 0, restart_at_ = 0, reduce_at_ = 4000, steps_ = 0;
  int restarts_ = 0;
  const std::function<bool()>* keep_going_ = nullptr;
};

}  // namespace dampward::solver::detail
