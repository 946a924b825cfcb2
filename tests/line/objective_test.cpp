#include "core/line/objective.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <set>

#include "checker.h"
#include "core/line/planner.h"
#include "shops.h"

// How good a plan is, what none can be below, and looking for a better one.
namespace dampward::line::test {
namespace {

Window window_of(std::uint32_t seed) {
  return seed % 3 == 0 ? Window::tight : seed % 3 == 1 ? Window::wide : Window::beside_oven;
}

Operation operation(const std::string& id, const std::string& unit, Minute length,
                    const std::string& skill = "") {
  Operation made;
  made.id = id;
  made.unit = unit;
  made.length = length;
  made.skill = skill;
  return made;
}

// A planted shop in which every unit is due at once, so that order counts.
Problem hurried(std::uint32_t seed) {
  Problem problem = planted(seed, window_of(seed));
  for (std::size_t i = 0; i < problem.units.size(); ++i) {
    problem.units[i].due = 60;
    problem.units[i].weight = 1 + static_cast<std::int64_t>(i % 3);
  }
  return problem;
}

}  // namespace

TEST_CASE("the terms of a plan by hand") {
  // Two units, one hour late at weight 3 and none; an oven from 10 to 50; hands that change twice on the first, never on the second.
  Problem problem;
  problem.units = {{"a", 100, 0, 3, {}}, {"b", 200, 0, 1, {}}};
  for (const char* id : {"a1", "a2", "a3", "a4", "b1", "b2"})
    problem.operations.push_back(operation(id, std::string(1, id[0]), 10));
  Answer answer;
  answer.placements = {{"a1", 0, 10, {"x"}, ""},    {"a2", 20, 30, {"y"}, ""}, {"a3", 30, 40, {}, ""},
                       {"a4", 150, 160, {"x"}, ""}, {"b1", 0, 10, {"z"}, ""},  {"b2", 10, 20, {"z"}, ""}};
  answer.stays = {{"l", "o", {10, 50}}};
  answer.late = {{"a", 100, 160}};
  answer.finish = 160;
  const Objective is = objective_of(problem, answer);
  CHECK(is.left_out == 0);
  CHECK(is.lateness == 180);
  CHECK(is.finish == 160);
  CHECK(is.ovens == 40);
  CHECK(is.hand_overs == 2);
}

TEST_CASE("an earlier term outweighs all that follow") {
  CHECK(Objective{0, 5, 900, 900, 90} < Objective{1, 0, 1, 1, 1});
  CHECK(Objective{0, 5, 900, 900, 90} < Objective{0, 6, 1, 1, 1});
  CHECK(Objective{0, 5, 900, 900, 90} < Objective{0, 5, 901, 1, 1});
}

// By hand: one person on shift 0-480 with a break 240-270 (small_shop has two of them, who can do all).
TEST_CASE("what no plan can be below: longest paths, shifts, and hands against hours") {
  Problem problem = small_shop(2);
  problem.units = {{"a", 100, 0, 2, {}}};
  problem.operations = {operation("a1", "a", 200, "bench"), operation("a2", "a", 100, "bench")};
  problem.gaps = {{"", "a1", "a2", 20, std::nullopt}};
  for (Person& person : problem.people) person.skills = {"bench"};
  // a2 may begin at 220, meets the break, and begins at 270 when that is over: 370.
  CHECK(at_best(problem).finish == 370);
  CHECK(at_best(problem).lateness == 2 * 270);
  // Twenty more hours of work are 1200 min beside the 300: two people have 900 in the first day, so the second is needed.
  for (int i = 0; i < 12; ++i)
    problem.operations.push_back(operation("b" + std::to_string(i), "", 100, "bench"));
  CHECK(at_best(problem).finish > 600);
}

TEST_CASE("a unit without a place is not asked what its best would be") {
  Problem problem = small_shop(2);
  problem.units = {{"a", 100, 0, 1, {}}, {"b", 50, 0, 1, {}}};
  problem.operations = {operation("a1", "a", 60, "bench"), operation("b1", "b", 60, "nobody has this")};
  for (Person& person : problem.people) person.skills = {"bench"};
  const auto answer = plan(problem);
  REQUIRE(answer->unplaced.size() == 1);
  const Objective best = at_best(problem, {"b"});
  CHECK(best.finish == 60);
  CHECK(best.lateness == 0);
}

TEST_CASE("a longer search is never worse, breaks no rule, stays above what is best, and is the same twice") {
  int better = 0;
  for (std::uint32_t seed = 1; seed <= 200; ++seed) {
    const Problem problem = hurried(seed);
    const auto first = plan(problem);
    PlanOptions options;
    options.effort = 20 * static_cast<std::int64_t>(problem.operations.size());
    const auto searched = plan(problem, options), again = plan(problem, options);
    REQUIRE(searched.ok());
    for (const std::string& broken : violations(problem, *searched)) FAIL_CHECK("seed ", seed, ": ", broken);
    const Objective is = objective_of(problem, *searched), was = objective_of(problem, *first);
    CHECK(is <= was);
    better += is < was ? 1 : 0;
    CHECK(objective_of(problem, *again) == is);
    CHECK(again->order == searched->order);
    const Objective best = at_best(problem);
    if (is.left_out == 0) {
      CHECK(best.lateness <= is.lateness);
      CHECK(best.finish <= is.finish);
      CHECK(best.ovens <= is.ovens);
    }
  }
  CHECK(better > 50);
}

TEST_CASE(
    "a plan handed its own order comes out as it was, and a disturbance leaves most of it where it stood") {
  std::size_t untouched = 0, unmoved = 0;
  for (std::uint32_t seed = 1; seed <= 200; ++seed) {
    const Problem problem = hurried(seed);
    PlanOptions options;
    options.effort = 20 * static_cast<std::int64_t>(problem.operations.size());
    const auto before = plan(problem, options);
    PlanOptions keep;
    keep.earlier = &*before;
    const auto same = plan(problem, keep);
    REQUIRE(same->placements.size() == before->placements.size());
    for (std::size_t i = 0; i < same->placements.size(); ++i)
      CHECK(same->placements[i].start == before->placements[i].start);

    // Half-way one unit's next operation takes half as long again.
    Problem later = problem;
    later.now = before->finish / 2;
    std::string slow;
    for (const Placement& p : before->placements) {
      if (p.start < later.now) later.fixed.push_back({p.operation, p.start, p.end, p.people, p.station});
    }
    for (Operation& next : later.operations) {
      const bool begun = std::any_of(later.fixed.begin(), later.fixed.end(),
                                     [&](const Fixed& fixed) { return fixed.operation == next.id; });
      if (begun || next.unit.empty() || next.attendance != Attendance::unattended) continue;
      next.length += next.length / 2;
      slow = next.unit;
      break;
    }
    // It, and whoever is in the oven with it.
    std::set<std::string> touched = {slow};
    for (const Load& load : later.loads) {
      std::set<std::string> units;
      for (const Member& member : load.members) {
        for (const Operation& known : later.operations) {
          if (known.id == member.loading) units.insert(known.unit);
        }
      }
      if (units.contains(slow)) touched.merge(units);
    }
    const auto after = plan(later, keep);
    REQUIRE(after.ok());
    for (const Placement& was : before->placements) {
      const auto unit =
          std::find_if(later.operations.begin(), later.operations.end(), [&](const Operation& operation) {
            return operation.id == was.operation;
          })->unit;
      if (was.start < later.now || unit.empty() || touched.contains(unit)) continue;
      ++untouched;
      const auto is = std::find_if(after->placements.begin(), after->placements.end(),
                                   [&](const Placement& p) { return p.operation == was.operation; });
      unmoved += is != after->placements.end() && is->start == was.start ? 1 : 0;
    }
  }
  CHECK(untouched > 200);
  CHECK(static_cast<double>(unmoved) >= 0.9 * static_cast<double>(untouched));
}

}  // namespace dampward::line::test
