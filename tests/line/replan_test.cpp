#include <doctest/doctest.h>

#include <algorithm>

#include "checker.h"
#include "core/line/planner.h"
#include "shops.h"

// A plan that is under way, and planning it again.
namespace dampward::line::test {
namespace {

// The problem as it stands at that minute: what has begun by then is fixed as it was planned.
Problem at_minute(Problem problem, const Answer& answer, Minute now) {
  problem.now = now;
  for (const Placement& p : answer.placements) {
    if (p.start < now) problem.fixed.push_back({p.operation, p.start, p.end, p.people, p.station});
  }
  return problem;
}

void all_placed(const Problem& problem, const Answer& answer, std::uint32_t seed) {
  for (const std::string& broken : violations(problem, answer)) FAIL_CHECK("seed ", seed, ": ", broken);
  for (const Unplaced& unplaced : answer.unplaced) FAIL_CHECK("seed ", seed, ": ", unplaced.reason);
}

}  // namespace

TEST_CASE(
    "a thousand random shops whose oven stands beside the booth: every unit finds its place, none coats "
    "beside heat") {
  int units = 0;
  for (std::uint32_t seed = 1; seed <= 1000; ++seed) {
    const Problem problem = planted(seed, Window::beside_oven);
    const auto answer = plan(problem);
    REQUIRE_MESSAGE(answer.ok(), to_text(answer.problems().front()));
    all_placed(problem, *answer, seed);
    units += static_cast<int>(problem.units.size());
  }
  CHECK(units > 2000);
}

TEST_CASE(
    "a plan under way is planned to its end again from any minute, and what has begun stays where it was") {
  for (std::uint32_t seed = 1; seed <= 600; ++seed) {
    const Window window = seed % 3 == 0 ? Window::tight : seed % 3 == 1 ? Window::wide : Window::beside_oven;
    const Problem problem = planted(seed, window);
    const auto before = plan(problem);
    REQUIRE(before.ok());
    const Minute now = static_cast<Minute>(seed * 7919) % std::max<Minute>(before->finish, 1);
    const Problem later = at_minute(problem, *before, now);
    const auto after = plan(later);
    REQUIRE_MESSAGE(after.ok(), to_text(after.problems().front()));
    all_placed(later, *after, seed);
  }
}

}  // namespace dampward::line::test
