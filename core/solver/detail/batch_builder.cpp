#include "core/solver/detail/batch_builder.h"

#include <algorithm>
#include <limits>
#include <numeric>
#include <tuple>

namespace dampward::solver::detail {
namespace {

struct Best {
  std::int64_t cost = std::numeric_limits<std::int64_t>::max();
  int batch = -1, machine = -1;
};

void weigh(BatchState& state, Best& best, int batch, int machine) {
  state.retime();
  if (state.cost() < best.cost) best = {state.cost(), batch, machine};
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
      for (const int b : state.order(m)) {
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
