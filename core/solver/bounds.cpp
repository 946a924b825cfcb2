#include "core/solver/bounds.h"

#include <algorithm>
#include <cstdint>

#include "core/solver/temporal.h"

namespace dampward::solver {
namespace {

// An operation that must have ended when the last one starts.
struct Spent {
  int head, tail;       // earliest start; least time from its end to the start of the last operation
  std::int64_t energy;  // of the resource
};

// Over all heads and tails: begin at the head, spend what none can spend outside, wait the tail.
std::int64_t bound_of(std::vector<Spent> spent, int capacity) {
  std::int64_t best = 0;
  std::sort(spent.begin(), spent.end(), [](const Spent& a, const Spent& b) { return a.tail > b.tail; });
  for (const Spent& first : spent) {
    std::int64_t energy = 0;
    for (const Spent& one : spent) {
      if (one.head < first.head) continue;
      energy += one.energy;
      best = std::max(best, first.head + (energy + capacity - 1) / capacity + one.tail);
    }
  }
  return best;
}

}  // namespace

int quick_lower_bound(const Problem& problem, const Starts& earliest) {
  const std::vector<int> to_last = longest_to_last(problem);
  std::int64_t best = earliest.back();
  for (int r = 0; r < static_cast<int>(problem.capacities.size()); ++r) {
    std::vector<Spent> spent;
    for (int i = 0; i < problem.size(); ++i) {
      const Operation& op = problem.operations[i];
      const int tail = to_last[i] == no_path ? -1 : to_last[i] - op.duration;
      for (const Demand& demand : op.demands) {
        if (demand.resource == r && demand.amount > 0 && tail >= 0)
          spent.push_back({earliest[i], tail, std::int64_t{op.duration} * demand.amount});
      }
    }
    best = std::max(best, bound_of(std::move(spent), problem.capacities[r]));
  }
  return static_cast<int>(best);
}

}  // namespace dampward::solver
