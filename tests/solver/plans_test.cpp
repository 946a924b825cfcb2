#include <doctest/doctest.h>

#include "adapters/files/project_judged.h"
#include "core/solver/detail/block_builder.h"
#include "core/solver/detail/justifier.h"
#include "core/solver/detail/neighbourhood.h"
#include "core/solver/detail/population.h"
#include "core/solver/temporal.h"
#include "tests/solver/tiny.h"

// Whatever finds or betters plans, each of its plans judged by the referee.

using namespace dampward::solver;
using namespace dampward::solver::detail;
using namespace dampward::solver::test;
using dampward::files::judged;

namespace {

const std::function<bool()> always = [] { return true; };

}  // namespace

TEST_CASE("plans bred from keys keep every rule, and none is shorter than what trying every start finds") {
  int found = 0;
  for (std::uint32_t seed = 5000; seed < 5300; ++seed) {
    INFO("seed ", seed);
    const Problem problem = tiny(seed);
    const EarliestStarts earliest = earliest_starts(problem);
    if (!earliest.cycle.empty()) continue;
    Population population(problem, earliest.starts, seed);
    population.run(20'000, always, 0);
    if (!population.best()) continue;
    ++found;
    CHECK(judged(problem, *population.best()).empty());
    CHECK(population.best()->back() >= TimeStepModel(problem).best().value());
  }
  CHECK(found > 150);
}

TEST_CASE("blocks planned alone and glued make a plan wherever there is one") {
  for (std::uint32_t seed = 6000; seed < 6400; ++seed) {
    INFO("seed ", seed);
    const Problem problem = tiny(seed);
    if (!earliest_starts(problem).cycle.empty()) continue;
    BlockBuilder builder(problem, seed);
    const Starts starts = builder.build(50'000, always);
    CHECK(starts.empty() == !TimeStepModel(problem).best());
    if (!starts.empty()) CHECK(judged(problem, starts).empty());
  }
}

TEST_CASE("a plan bettered piece by piece gets no longer and keeps every rule") {
  int better = 0;
  for (std::uint32_t seed = 7000; seed < 7300; ++seed) {
    INFO("seed ", seed);
    const Problem problem = tiny(seed);
    const EarliestStarts earliest = earliest_starts(problem);
    if (!earliest.cycle.empty()) continue;
    Starts starts = BlockBuilder(problem, seed).build(1'000, always);
    if (starts.empty()) continue;
    const int before = starts.back();
    Neighbourhood neighbourhood(problem, earliest.starts, seed);
    neighbourhood.run(starts, 50'000, always, 0);
    CHECK(judged(problem, starts).empty());
    CHECK(starts.back() <= before);
    better += starts.back() < before;
  }
  CHECK(better > 5);
}

TEST_CASE("justifying a plan of plain waits never makes it longer") {
  for (std::uint32_t seed = 8000; seed < 8300; ++seed) {
    Problem problem = tiny(seed);
    std::erase_if(problem.arcs, [](const Arc& arc) { return arc.from > arc.to; });
    Decoder decoder(problem);
    Justifier justifier(problem);
    Starts decoded, justified;
    const std::vector<int> keys(problem.operations.size(), 0);
    REQUIRE(decoder.decode(keys, decoded));
    REQUIRE(justifier.plan(keys, justified));
    CHECK(justified.back() <= decoded.back());
    CHECK(judged(problem, justified).empty());
  }
}
