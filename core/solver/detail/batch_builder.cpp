#include "core/solver/detail/batch_builder.h"

#include <algorithm>
#include <limits>
#include <numeric>
#include <tuple>

namespace dampward::solver::detail {
namespace {

// Of a machine, so many from the last back may take one more job: thousands of jobs are placed in well under a second.
constexpr std::size_t latest_batches = 64;

struct Best {
  std::int64_t cost = std::numeric_limits<std::int64_t>::max();
  int batch = -1, machine = -1;
};

void weigh(BatchState& state, Best& best, int batch, int machine) {
  if (state.retime(best.cost - state.kept_cost()) && state.cost() < best.cost)
    best = {state.cost(), batch, machine};
  state.take_back();
}

}  // namespace

void build(BatchState& state) {
  const BatchProblem& problem = state.problem();
  std::vector<int> jobs(problem.jobs.size());
  std::iota(jobs.begin(), jobs.end(), 0);
  std::sort(jobs.begin(), jobs.end(), [&](int a, int b) {
    const BatchJob &x = problem.jobs[a], &y = problem.jobs[b];
    return std::tie(x.due, x.release, a) < std::tie(y.due, y.release, b);
  });
  for (const int job : jobs) {
    Best best;
    for (int m = 0; m < static_cast<int>(problem.machines.size()); ++m) {
      if ((state.machines_of(job) >> m & 1) == 0) continue;
      const auto& order = state.order(m);
      for (std::size_t k = order.size() - std::min(order.size(), latest_batches); k < order.size(); ++k) {
        const int b = order[k];
        if (state.batch(b).family != problem.jobs[job].family || !state.fits(b, job)) continue;
        state.put(b, job);
        weigh(state, best, b, m);
      }
      state.open(m, static_cast<int>(state.order(m).size()), job);
      weigh(state, best, -1, m);
    }
    if (best.batch >= 0)
      state.put(best.batch, job);
    else
      state.open(best.machine, static_cast<int>(state.order(best.machine).size()), job);
    state.retime();
    state.keep();
  }
}

}  // namespace dampward::solver::detail
