#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <thread>

#include "adapters/files/oven_set_file.h"
#include "core/solver/batch_bounds.h"
#include "core/solver/batch_search.h"
#include "tests/solver/batch_tiny.h"
#include "tests/solver/shared_data.h"

using namespace dampward::solver;
using namespace dampward::solver::test;

namespace {

BatchSearchOptions limited(std::int64_t work) {
  BatchSearchOptions options;
  options.work = work;
  return options;
}

void side_by_side(std::span<const std::function<void()>> tasks) {
  std::vector<std::jthread> threads;
  for (const auto& task : tasks) threads.emplace_back(task);
}

bool same(const BatchPlan& a, const BatchPlan& b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](const PlannedBatch& x, const PlannedBatch& y) {
    return x.machine == y.machine && x.start == y.start && x.length == y.length && x.jobs == y.jobs;
  });
}

// Two jobs of one family that fit together, one of another; by hand: the two together 0 to 4, set-up 1, the third 5 to 8.
BatchProblem three_jobs() {
  BatchProblem problem;
  problem.families = 2;
  problem.setup_times = problem.setup_costs = {{0, 1}, {1, 0}};
  problem.machines = {{10, 0, {{0, 20}}}};
  problem.jobs = {{0, 5, 0, 4, 4, 9, {0}}, {0, 5, 0, 4, 3, 9, {0}}, {1, 1, 0, 8, 3, 9, {0}}};
  problem.weights = {1, 100, 1, 0};
  return problem;
}

}  // namespace

TEST_CASE(
    "tiny batch problems: the search finds the least cost of trying every batching, and no bound is above "
    "it") {
  int solved = 0;
  rc::check([&] {
    const auto seed = *rc::gen::arbitrary<std::uint32_t>();
    const BatchProblem problem = tiny_batches(seed);
    if (!faults(problem).empty()) return;
    const std::optional<std::int64_t> right = EveryBatching(problem).best();
    const auto outcome = solve(problem, limited(1'000'000));
    RC_ASSERT(outcome.ok());
    RC_ASSERT(outcome->plan.empty() == !right);
    if (!right) return;
    const auto verdict = judged(problem, outcome->plan);
    RC_ASSERT(verdict.broken.empty());
    RC_ASSERT(verdict.weighted == outcome->objective);
    RC_ASSERT(weighted(problem.weights, outcome->cost) == outcome->objective);
    RC_ASSERT(outcome->objective == *right);
    RC_ASSERT(outcome->least_objective <= *right);
    ++solved;
  });
  CHECK(solved > 20);
}

TEST_CASE("tiny batch problems: no term of any best plan's cost is below its bound") {
  int late = 0;
  for (std::uint32_t seed = 0; seed < 3000; ++seed) {
    BatchProblem problem = tiny_batches(seed);
    if (problem.size() > 4 || !faults(problem).empty()) continue;
    const BatchCost bound = batch_lower_bound(problem);
    INFO("seed ", seed);
    // Each term alone decides.
    const std::pair<BatchWeights, std::int64_t> terms[] = {{{1, 0, 0, 0}, bound.run_time},
                                                           {{0, 1, 0, 0}, bound.late_jobs},
                                                           {{0, 0, 1, 0}, bound.setup_cost},
                                                           {{0, 0, 0, 1}, bound.setup_time}};
    for (const auto& [weights, least] : terms) {
      problem.weights = weights;
      const std::optional<std::int64_t> right = EveryBatching(problem).best();
      if (!right) continue;
      CHECK(least <= *right);
      if (weights.late_jobs == 1) late += least == *right && least > 0;
    }
  }
  CHECK(late > 100);
}

TEST_CASE("three jobs on one machine, worked out by hand") {
  const auto outcome = solve(three_jobs(), limited(400'000));
  REQUIRE(outcome.ok());
  CHECK(outcome->status == Status::optimal);
  CHECK(outcome->objective == 4 + 3 + 1);
  CHECK(outcome->plan.size() == 2);
  CHECK(outcome->plan[1].start == 5);
  CHECK(outcome->cost.late_jobs == 0);
}

TEST_CASE("jobs whose lengths do not overlap never share a batch, and the bound counts that") {
  BatchProblem problem = three_jobs();
  problem.jobs[1].max_time = 3;
  CHECK(batch_lower_bound(problem).run_time == 4 + 3 + 3);
  const auto outcome = solve(problem, limited(400'000));
  CHECK(outcome->plan.size() == 3);
  CHECK(judged(problem, outcome->plan).broken.empty());
}

TEST_CASE("a set-up must fit into the interval of its batch") {
  BatchProblem problem = three_jobs();
  problem.jobs.erase(problem.jobs.begin(), problem.jobs.begin() + 2);
  problem.machines[0].open = {{0, 3}, {10, 20}};
  const auto outcome = solve(problem, limited(400'000));
  REQUIRE(outcome->plan.size() == 1);
  CHECK(outcome->plan[0].start == 11);
}

TEST_CASE("a batch problem no plan can hold for a reason that shows is refused with the reason") {
  const auto found = [](auto change) {
    BatchProblem problem = three_jobs();
    change(problem);
    const auto outcome = solve(problem);
    return outcome.ok() ? std::string("none") : outcome.problems().front().found;
  };
  CHECK(found([](BatchProblem&) {}) == "none");
  CHECK(found([](BatchProblem& p) { p.jobs[0].size = 11; }) == "job 1 has size 11");
  CHECK(found([](BatchProblem& p) { p.jobs[2].size = -1; }) == "job 3 has size -1");
  CHECK(found([](BatchProblem& p) { p.jobs[1].release = 18; }) ==
        "job 2 takes 3 from 18 on, and no machine it may go to is open for that");
  CHECK(found([](BatchProblem& p) { p.jobs[1].max_time = 2; }) == "job 2 takes from 3 to 2");
  CHECK(found([](BatchProblem& p) { p.jobs[1].machines = {1}; }) ==
        "job 2 may go to 1 machines, some unknown, twice, or none");
  CHECK(found([](BatchProblem& p) { p.jobs[1].family = 2; }) == "job 2 is of family 3");
  CHECK(found([](BatchProblem& p) { p.machines[0].open.push_back({19, 30}); }) ==
        "machine 1 opens at 19 before it has closed at 20");
  CHECK(found([](BatchProblem& p) { p.setup_times.pop_back(); }) == "set-up times from 1 families");
  CHECK(found([](BatchProblem& p) { p.jobs.clear(); }) == "0 jobs");
}

TEST_CASE("asked to stop at once, the batch search still shows its first plan") {
  BatchSearchOptions options;
  options.keep_going = [] { return false; };
  const auto outcome = solve(three_jobs(), options);
  REQUIRE(outcome.ok());
  CHECK_FALSE(outcome->plan.empty());
}

TEST_CASE("batch plans of ../shared: within bounds, the same under a work limit on one thread and on two") {
  const std::filesystem::path set = shared / "oven_osp";
  if (!std::filesystem::exists(set)) {
    MESSAGE("skipped: ../shared is absent");
    return;
  }
  // bounds.csv: proved optima of Lackner et al. 2023 (oven_osp/README.md); integer: cost times normalization_constant.
  const std::string bounds = text_of(set / "bounds.csv");
  for (const auto& entry : std::filesystem::directory_iterator(set / "smoke")) {
    const std::string name = entry.path().filename().string();
    const auto problem = dampward::files::read_oven_set(text_of(entry.path()), name);
    REQUIRE(problem.ok());
    BatchSearchOptions options = limited(20'000'000);
    const auto once = solve(*problem, options);
    options.executor = side_by_side;
    const auto again = solve(*problem, options);
    REQUIRE(once.ok());
    INFO(name);
    CHECK(same(once->plan, again->plan));
    CHECK(once->work == again->work);
    const auto verdict = judged(*problem, once->plan);
    CHECK(verdict.broken.empty());
    CHECK(verdict.weighted == once->objective);
    const std::size_t line = bounds.find("\n" + name + ",");
    REQUIRE(line != std::string::npos);
    std::istringstream row(bounds.substr(line + 1));
    std::vector<std::string> cells(6);
    for (std::string& cell : cells) std::getline(row, cell, ',');
    const double proved = std::stod(cells[2]) * std::stod(cells[1]);
    if (cells[4] != "optimal") continue;
    CHECK(static_cast<double>(once->objective) > proved - 0.5);
    CHECK(static_cast<double>(once->least_objective) < proved + 0.5);
  }
}
