#include <doctest/doctest.h>

#include "core/solver/detail/batch_builder.h"
#include "core/solver/detail/batch_moves.h"
#include "tests/solver/batch_tiny.h"

// What a plan under change says of itself after each move, held against the same plan set up afresh.

using namespace dampward::solver;
using namespace dampward::solver::detail;
using namespace dampward::solver::test;

namespace {

std::int64_t cost_afresh(const BatchProblem& problem, const BatchPlan& plan) {
  BatchState state(problem);
  state.load(plan);
  return state.cost();
}

// The same with more jobs, so that batches are many and changes reach far.
BatchProblem larger(std::uint32_t seed) {
  BatchProblem problem = tiny_batches(seed);
  const std::vector<BatchJob> few = problem.jobs;
  for (int copy = 1; copy < 6; ++copy) {
    for (BatchJob job : few) {
      job.release += copy;
      job.due += 3 * copy;
      problem.jobs.push_back(job);
    }
  }
  for (BatchMachine& machine : problem.machines) {
    machine.open.back().to += 40;
    machine.open.push_back({machine.open.back().to + 5, machine.open.back().to + 60});
  }
  return problem;
}

}  // namespace

TEST_CASE("a move that is kept costs what its plan costs afresh, one that is taken back leaves no trace") {
  int moved = 0, given_up = 0;
  for (std::uint32_t seed = 0; seed < 60; ++seed) {
    const BatchProblem problem = larger(seed);
    if (!faults(problem).empty()) continue;
    INFO("seed ", seed);
    BatchState state(problem);
    build(state);
    Random random(seed);
    for (int k = 0; k < 400; ++k) {
      const std::int64_t before = state.cost();
      if (!random_move(state, random)) {
        CHECK(state.cost() == before);
        continue;
      }
      ++moved;
      BatchState whole = state;
      whole.retime();
      const std::int64_t most = random.below(100) - 20;
      if (!state.retime(most)) {
        // Stopped early, rightly so.
        CHECK(whole.cost() - before > most);
        ++given_up;
        state.take_back();
      } else if (random.below(2) == 0) {
        CHECK(state.cost() == whole.cost());
        state.take_back();
        CHECK(state.cost() == before);
      } else {
        state.keep();
      }
      CHECK(cost_afresh(problem, state.plan()) == state.cost());
    }
    if (state.complete()) {
      CHECK(judged(problem, state.plan()).broken.empty());
      CHECK(judged(problem, state.plan()).weighted == state.cost());
    }
  }
  CHECK(moved > 5000);
  CHECK(given_up > 500);
}
