#include <doctest/doctest.h>

#include <atomic>
#include <thread>

#include "adapters/files/project_judged.h"
#include "core/solver/bounds.h"
#include "core/solver/search.h"
#include "core/solver/temporal.h"
#include "tests/solver/shared_data.h"
#include "tests/solver/tiny.h"

using namespace dampward::solver;
using namespace dampward::solver::test;
using dampward::files::judged;

namespace {

// The problem with only these arcs and resources.
Problem part_of(const Problem& problem, const std::vector<int>& arcs, const std::vector<int>& resources) {
  Problem part = problem;
  part.arcs.clear();
  for (const int arc : arcs) part.arcs.push_back(problem.arcs[arc]);
  for (Operation& op : part.operations) {
    std::erase_if(op.demands, [&](const Demand& demand) {
      return std::find(resources.begin(), resources.end(), demand.resource) == resources.end();
    });
  }
  return part;
}

std::vector<int> without(std::vector<int> members, std::size_t index) {
  members.erase(members.begin() + static_cast<std::ptrdiff_t>(index));
  return members;
}

SearchOptions limited(std::int64_t work) {
  SearchOptions options;
  options.work = work;
  return options;
}

void side_by_side(std::span<const std::function<void()>> tasks) {
  std::vector<std::jthread> threads;
  for (const auto& task : tasks) threads.emplace_back(task);
}

}  // namespace

TEST_CASE("tiny problems: the search proves what trying every start finds, or names a least conflict") {
  int refuted = 0;
  for (std::uint32_t seed = 2000; seed < 2500; ++seed) {
    INFO("seed ", seed);
    const Problem problem = tiny(seed);
    const std::optional<int> right = TimeStepModel(problem).best();
    const auto outcome = solve(problem);
    REQUIRE(outcome.ok());
    if (right) {
      CHECK(outcome->status == Status::optimal);
      CHECK(outcome->starts.back() == *right);
      CHECK(outcome->lower_bound == *right);
      CHECK(judged(problem, outcome->starts).empty());
      CHECK_FALSE(outcome->conflict);
      continue;
    }
    CHECK(outcome->status == Status::infeasible);
    CHECK(outcome->starts.empty());
    REQUIRE(outcome->conflict);
    const auto& [arcs, resources, minimal] = *outcome->conflict;
    CHECK(minimal);
    CHECK_FALSE(TimeStepModel(part_of(problem, arcs, resources)).best());
    for (std::size_t k = 0; k < arcs.size(); ++k)
      CHECK(TimeStepModel(part_of(problem, without(arcs, k), resources)).best());
    for (std::size_t k = 0; k < resources.size(); ++k)
      CHECK(TimeStepModel(part_of(problem, arcs, without(resources, k))).best());
    ++refuted;
  }
  CHECK(refuted > 20);
}

TEST_CASE("the quick lower bound is never above the best") {
  for (std::uint32_t seed = 3000; seed < 4000; ++seed) {
    const Problem problem = tiny(seed);
    const EarliestStarts earliest = earliest_starts(problem);
    if (!earliest.cycle.empty()) continue;
    const std::optional<int> best = TimeStepModel(problem).best();
    INFO("seed ", seed);
    if (best) CHECK(quick_lower_bound(problem, earliest.starts) <= *best);
  }
}

TEST_CASE("one machine with heads and tails, worked out by hand") {
  // Three operations of 2, 3, 4 on one machine, each done 5 before the end: 9 of work, then 5.
  Problem problem;
  problem.capacities = {1};
  problem.operations = {{0, {}}, {2, {{0, 1}}}, {3, {{0, 1}}}, {4, {{0, 1}}}, {0, {}}};
  for (int i = 1; i <= 3; ++i) {
    problem.arcs.push_back({0, i, 0});
    problem.arcs.push_back({i, 4, problem.operations[i].duration + 5});
  }
  CHECK(quick_lower_bound(problem, earliest_starts(problem).starts) == 14);
  const auto outcome = solve(problem);
  REQUIRE(outcome.ok());
  CHECK(outcome->status == Status::optimal);
  CHECK(outcome->starts.back() == 14);
}

TEST_CASE(
    "two that must overlap on one machine: the longest gap and the machine are named, and nothing else") {
  Problem problem;
  problem.capacities = {1, 9};
  problem.operations = {{0, {}}, {4, {{0, 1}}}, {3, {{0, 1}}}, {5, {{1, 2}}}, {0, {}}};
  problem.arcs = {{0, 1, 0}, {0, 2, 0}, {0, 3, 0}, {1, 2, 0}, {2, 1, -3}, {1, 4, 4}, {2, 4, 3}, {3, 4, 5}};
  const auto outcome = solve(problem);
  REQUIRE(outcome.ok());
  CHECK(outcome->status == Status::infeasible);
  REQUIRE(outcome->conflict);
  // 2 starts within 3 after 1, and not before it; either alone would do with the other order.
  CHECK(outcome->conflict->arcs == std::vector<int>{3, 4});
  CHECK(outcome->conflict->resources == std::vector<int>{0});
}

TEST_CASE("a ring of gaps is refuted before any search, arc by arc") {
  Problem problem;
  problem.operations.resize(3);
  problem.arcs = {{0, 1, 5}, {1, 2, 0}, {1, 0, -4}};
  const auto outcome = solve(problem, limited(1));
  REQUIRE(outcome.ok());
  CHECK(outcome->status == Status::infeasible);
  REQUIRE(outcome->conflict);
  CHECK(outcome->conflict->arcs.size() == 2);
  CHECK(outcome->conflict->minimal);
}

TEST_CASE("what must come before the first operation makes a plan impossible, since that one starts at 0") {
  Problem problem;
  problem.capacities = {1};
  problem.operations = {{0, {}}, {2, {{0, 1}}}, {0, {}}};
  problem.arcs = {{1, 0, 3}, {1, 2, 2}};
  const auto outcome = solve(problem);
  REQUIRE(outcome.ok());
  CHECK(outcome->status == Status::infeasible);
  REQUIRE(outcome->conflict);
  CHECK(outcome->conflict->arcs == std::vector<int>{0});
  CHECK(outcome->conflict->resources.empty());
}

TEST_CASE("a problem with faults is refused, with the faults") {
  Problem problem;
  problem.operations.resize(2);
  problem.operations[1].duration = -3;
  CHECK_FALSE(solve(problem).ok());
}

TEST_CASE("the smallest problems: one operation, and no resources") {
  Problem one;
  one.operations.resize(1);
  const auto outcome = solve(one);
  REQUIRE(outcome.ok());
  CHECK(outcome->status == Status::optimal);
  CHECK(outcome->starts == Starts{0});
}

TEST_CASE("asked to stop at once, the search says that it knows nothing") {
  SearchOptions options;
  options.keep_going = [] { return false; };
  const auto outcome = solve(tiny(2001), options);
  REQUIRE(outcome.ok());
  CHECK(outcome->status == Status::unknown);
}

TEST_CASE("under a work limit the plan is the same every time, on one thread and on two") {
  if (!std::filesystem::exists(shared)) {
    MESSAGE("skipped: ../shared is absent");
    return;
  }
  for (const char* name : {"psplib/j120/smoke/j12021_1.sm", "rcpsp_max/ubo100/smoke"}) {
    std::filesystem::path path = shared / name;
    if (std::filesystem::is_directory(path)) path = std::filesystem::directory_iterator(path)->path();
    const auto problem = read(path);
    REQUIRE(problem.ok());
    SearchOptions options = limited(6'000'000);
    const auto once = solve(*problem, options), again = solve(*problem, options);
    options.executor = side_by_side;
    const auto on_two = solve(*problem, options);
    REQUIRE(once.ok());
    CHECK(once->starts == again->starts);
    CHECK(once->lower_bound == again->lower_bound);
    CHECK(once->starts == on_two->starts);
    CHECK(once->lower_bound == on_two->lower_bound);
    CHECK(once->work == on_two->work);
    if (!once->starts.empty()) CHECK(judged(*problem, once->starts).empty());
  }
}

TEST_CASE("progress only ever gets better, and ends with the outcome") {
  std::vector<int> lasts, bounds;
  SearchOptions options = limited(20'000'000);
  options.on_progress = [&](const Starts& starts, int bound) {
    lasts.push_back(starts.back());
    bounds.push_back(bound);
  };
  const Problem problem = tiny(2003);
  const auto outcome = solve(problem, options);
  REQUIRE(outcome.ok());
  CHECK(std::is_sorted(lasts.rbegin(), lasts.rend()));
  CHECK(std::is_sorted(bounds.begin(), bounds.end()));
  if (!lasts.empty()) CHECK(lasts.back() == outcome->starts.back());
}

TEST_CASE("instances of ../shared: proofs meet the best known bounds, plans keep every rule") {
  if (!std::filesystem::exists(shared)) {
    MESSAGE("skipped: ../shared is absent");
    return;
  }
  // rcpsp_max/README.md and psplib/README.md tell where the bounds come from.
  for (const char* set : {"rcpsp_max/j10", "rcpsp_max/j20", "rcpsp_max/ubo20", "rcpsp_max/c", "psplib/j30"}) {
    const std::string bounds = text_of(shared / set / "bounds.csv");
    for (const auto& entry : std::filesystem::directory_iterator(shared / set / "smoke")) {
      const std::string name = entry.path().filename().string();
      const std::size_t line = bounds.find("\n" + name + ",");
      if (line == std::string::npos) continue;
      const std::string row = bounds.substr(line + 1, bounds.find('\n', line + 1) - line - 1);
      const auto problem = read(entry.path());
      REQUIRE(problem.ok());
      const auto outcome = solve(*problem, limited(60'000'000));
      REQUIRE(outcome.ok());
      INFO(set, " ", row);
      if (!outcome->starts.empty()) CHECK(judged(*problem, outcome->starts).empty());
      if (row.ends_with("infeasible")) {
        CHECK(outcome->status == Status::infeasible);
      } else if (row.ends_with("optimal") && outcome->status == Status::optimal) {
        const std::string best = "," + std::to_string(outcome->starts.back()) + ",optimal";
        CHECK(row.ends_with(best));
      }
    }
  }
}
