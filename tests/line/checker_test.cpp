#include "checker.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "core/line/planner.h"
#include "shops.h"

namespace dampward::line::test {
namespace {

struct Case {
  Problem problem = small_shop(2);
  Answer answer;

  Case() {
    add_unit(problem, "0001", "morning", 60, 15);
    add_unit(problem, "0002", "later", 60, 15);
    answer = plan(problem).value();
  }
  Placement& at(const std::string& id) {
    return *std::find_if(answer.placements.begin(), answer.placements.end(),
                         [&](const Placement& p) { return p.operation == id; });
  }
  void move(const std::string& id, Minute start) {
    Placement& p = at(id);
    p.end += start - p.start;
    p.start = start;
  }
  bool caught(const std::string& rule) const {
    const auto found = violations(problem, answer);
    return std::any_of(found.begin(), found.end(),
                       [&](const std::string& v) { return v.starts_with(rule + ":"); });
  }
};

}  // namespace

TEST_CASE("the checker finds nothing in a sound plan") {
  CHECK(violations(Case().problem, Case().answer).empty());
}

TEST_CASE("the checker names each planted fault") {
  SUBCASE("a gap too short") {
    Case c;
    c.move("0001.coat1", c.at("0001.unload").end - 1);
    CHECK(c.caught("gap"));
  }
  SUBCASE("a warm window missed") {
    Case c;
    c.move("0001.coat1", c.at("0001.unload").end + 16);
    CHECK(c.caught("gap"));
  }
  SUBCASE("one person at two jobs") {
    Case c;
    c.at("0002.test").people = c.at("0001.test").people;
    c.move("0002.test", c.at("0001.test").start);
    CHECK(c.caught("hands"));
  }
  SUBCASE("nobody at attended work") {
    Case c;
    c.at("0001.test").people.clear();
    CHECK(c.caught("hands"));
  }
  SUBCASE("a person without the skill") {
    Case c;
    std::erase(c.problem.people[0].skills, "test");
    std::erase(c.problem.people[1].skills, "test");
    CHECK(c.caught("skill"));
  }
  SUBCASE("work after the shift") {
    Case c;
    c.move("0001.mark", 490);
    CHECK(c.caught("shift"));
  }
  SUBCASE("work through a break") {
    Case c;
    c.move("0001.mark", 250);
    CHECK(c.caught("break"));
  }
  SUBCASE("a length cut short") {
    Case c;
    --c.at("0001.test").end;
    CHECK(c.caught("span"));
  }
  SUBCASE("the wrong station") {
    Case c;
    c.at("0001.coat1").station = "bench";
    CHECK(c.caught("station"));
  }
  SUBCASE("a station over its places") {
    Case c;
    c.move("0002.coat1", c.at("0001.coat1").start);
    CHECK(c.caught("station"));
  }
  SUBCASE("two loads in one oven") {
    Case c;
    c.move("0002.load", c.at("morning.bake").start);
    CHECK(c.caught("oven"));
  }
  SUBCASE("unloading before the bake has ended") {
    Case c;
    c.move("0001.unload", c.at("morning.bake").end - 1);
    CHECK(c.caught("oven"));
  }
  SUBCASE("an oven hot without power") {
    Case c;
    c.problem.ovens[0].powered = {{0, 60}};
    CHECK(c.caught("power"));
  }
  SUBCASE("a bake nobody watches") {
    Case c;
    for (Person& p : c.problem.people) p.shifts = {{0, 60}};
    CHECK(c.caught("watch"));
  }
  SUBCASE("more vapour than the room bears") {
    Case c;
    c.problem.capacities[0].steps = {{0, 40}};
    CHECK(c.caught("capacity"));
  }
  SUBCASE("a unit half done") {
    Case c;
    std::erase_if(c.answer.placements, [](const Placement& p) { return p.operation == "0001.mark"; });
    CHECK(c.caught("whole"));
  }
  SUBCASE("a lateness kept quiet") {
    Case c;
    c.problem.units[0].due = 10;
    CHECK(c.caught("late"));
  }
}

}  // namespace dampward::line::test
