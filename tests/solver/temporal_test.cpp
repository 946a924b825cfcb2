#include <doctest/doctest.h>

#include "core/solver/temporal.h"
#include "tests/solver/tiny.h"

using namespace dampward::solver;
using namespace dampward::solver::test;

namespace {

Problem without_resources(int operations, std::vector<Arc> arcs) {
  Problem problem;
  problem.operations.resize(operations);
  problem.arcs = std::move(arcs);
  return problem;
}

}  // namespace

TEST_CASE("earliest starts are the longest paths, worked out by hand") {
  // 0 -> 1 after 2, 0 -> 2 after 1, 1 -> 3 after 3, 2 -> 3 after 5; 2 at most 0 before 1 pulls 2 up to 2.
  const auto result =
      earliest_starts(without_resources(4, {{0, 1, 2}, {0, 2, 1}, {1, 3, 3}, {2, 3, 5}, {1, 2, 0}}));
  CHECK(result.cycle.empty());
  CHECK(result.starts == Starts{0, 2, 2, 7});
}

TEST_CASE("a ring of gaps longer than zero is named arc by arc") {
  // 1 waits 5 for 0's neighbour 2, yet 2 may be at most 4 before it.
  const auto result = earliest_starts(without_resources(4, {{0, 2, 0}, {2, 1, 5}, {1, 3, 1}, {1, 2, -4}}));
  CHECK(result.starts.empty());
  REQUIRE(result.cycle.size() == 2);
  CHECK(std::min(result.cycle[0], result.cycle[1]) == 1);
  CHECK(std::max(result.cycle[0], result.cycle[1]) == 3);
}

TEST_CASE("an arc from an operation to itself is a ring when its lag is above zero") {
  CHECK(earliest_starts(without_resources(2, {{1, 1, 1}})).cycle == std::vector<int>{0});
  CHECK(earliest_starts(without_resources(2, {{1, 1, 0}})).cycle.empty());
}

TEST_CASE("a named ring closes, and its lags add up above zero") {
  int rings = 0;
  for (std::uint32_t seed = 0; seed < 3000; ++seed) {
    const Problem problem = tiny(seed);
    const auto result = earliest_starts(problem);
    if (result.cycle.empty()) {
      for (const Arc& arc : problem.arcs) CHECK(result.starts[arc.to] >= result.starts[arc.from] + arc.lag);
      continue;
    }
    ++rings;
    int sum = 0;
    for (std::size_t k = 0; k < result.cycle.size(); ++k) {
      const Arc& arc = problem.arcs[result.cycle[k]];
      const Arc& next = problem.arcs[result.cycle[(k + 1) % result.cycle.size()]];
      CHECK(arc.to == next.from);
      sum += arc.lag;
    }
    CHECK(sum > 0);
  }
  CHECK(rings > 100);
}

TEST_CASE("blocks hold what can reach each other, and arcs between them go up") {
  const Problem problem = without_resources(5, {{0, 1, 0}, {1, 2, 1}, {2, 1, -3}, {2, 3, 0}, {3, 4, 0}});
  const Blocks blocks = blocks_of(problem);
  CHECK(blocks.members.size() == 4);
  CHECK(blocks.of[1] == blocks.of[2]);
  for (const Arc& arc : problem.arcs) CHECK(blocks.of[arc.from] <= blocks.of[arc.to]);
}

TEST_CASE("a problem that cannot be posed is told in full") {
  Problem problem = without_resources(2, {{0, 7, 1}});
  problem.operations[1].duration = -1;
  problem.operations[0].demands = {{0, 3}, {0, 1}, {4, 1}};
  problem.capacities = {2};
  CHECK(faults(problem).size() == 5);
  CHECK(faults(Problem{}).size() == 1);
  CHECK(faults(without_resources(most_operations + 1, {})).size() == 1);
  Problem endless = without_resources(2, {});
  endless.operations[0].duration = endless.operations[1].duration = latest_time - 1;
  CHECK(faults(endless).size() == 1);
}
