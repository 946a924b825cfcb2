#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <vector>

#include "core/solver/detail/justifier.h"
#include "core/solver/detail/random.h"

namespace dampward::solver::detail {

// Plans that breed: of two parents' orders a stretch of one stands inside the other (two-point crossover on activity lists,
// Hartmann 1998), each child is justified (Valls, Ballestín and Quintanilla 2008).
class Population {
 public:
  Population(const Problem& problem, const Starts& earliest, std::uint64_t seed);

  // Breeds until so much work is done, or the question says no, or a plan is as good as `good_enough`.
  void run(std::int64_t work, const std::function<bool()>& keep_going, int good_enough);
  const std::optional<Starts>& best() const { return best_; }
  // A plan from elsewhere joins.
  void join(const Starts& starts);
  std::int64_t work() const { return 5 * justifier_.work(); }

 private:
  struct Member {
    Starts starts;
    std::vector<int> order;  // operations by start
  };
  void beget_first();
  void beget_child();
  void admit(const Starts& starts);
  const Member& parent();

  const Starts& earliest_;
  Justifier justifier_;
  Random random_;
  std::vector<Member> members_;
  std::optional<Starts> best_;
  int firsts_ = 0;
  std::vector<int> keys_;
  std::vector<char> taken_;
  Starts child_;
};

}  // namespace dampward::solver::detail
