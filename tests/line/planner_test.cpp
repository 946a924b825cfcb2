#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <map>

#include "checker.h"
#include "core/line/planner.h"
#include "shops.h"

namespace dampward::line::test {
namespace {

Answer planned(const Problem& problem) {
  const auto result = plan(problem);
  if (!result) FAIL(to_text(result.problems().front()));
  const Answer answer = *result;
  for (const std::string& broken : violations(problem, answer)) FAIL_CHECK(broken);
  return answer;
}

const Placement& at(const Answer& answer, const std::string& id) {
  const auto it = std::find_if(answer.placements.begin(), answer.placements.end(),
                               [&](const Placement& p) { return p.operation == id; });
  REQUIRE(it != answer.placements.end());
  return *it;
}

std::map<std::string, Minute> starts(const Answer& answer) {
  std::map<std::string, Minute> result;
  for (const Placement& p : answer.placements) result[p.operation] = p.start;
  return result;
}

Operation work(const std::string& id, Minute length, const std::string& skill) {
  Operation op;
  op.id = id;
  op.unit = "u";
  op.length = length;
  op.skill = skill;
  return op;
}

}  // namespace

TEST_CASE("several demands of one operation on a capacity add up, each for its own tail") {
  Problem problem;
  problem.horizon = 1000;
  problem.units = {{"u", {}, 0, 1, {}}};
  problem.people = {{"p", {"spray"}, {{0, 1000}}, {}}};
  problem.capacities = {{"vapour", {{0, 10}}}};
  for (const char* id : {"a", "b"}) {
    problem.operations.push_back(work(id, 5, "spray"));
    problem.operations.back().demands = {{"vapour", 4, 0}, {"vapour", 4, 20}};
  }
  const Answer answer = planned(problem);
  // 8 of 10 while one runs, 4 for 20 minutes after: the other finds room only then.
  const Minute apart = std::abs(at(answer, "a").start - at(answer, "b").start);
  CHECK(apart == 25);
}

TEST_CASE("an empty queue is an empty timetable") {
  const Answer answer = planned(small_shop(1));
  CHECK(answer.placements.empty());
  CHECK(answer.finish == 0);
}

TEST_CASE("one unit goes through the shop without waiting where nobody else is in the way") {
  Problem shop = small_shop(1);
  add_unit(shop, "0001", "morning", 60, 15);
  const Answer answer = planned(shop);
  CHECK(answer.unplaced.empty());
  CHECK(at(answer, "0001.test").start == 0);
  CHECK(at(answer, "0001.load").start == 20);
  CHECK(at(answer, "morning.bake").start == 25);
  CHECK(at(answer, "0001.coat1").start == 90);
  CHECK(answer.stays.front().occupied == Span{20, 90});
}

TEST_CASE("a full oven is emptied unit by unit, so that each meets the gun inside its own window") {
  Problem shop = small_shop(2);
  for (const char* id : {"0001", "0002", "0003", "0004", "0005", "0006"})
    add_unit(shop, id, "morning", 60, 5);
  const Answer answer = planned(shop);
  CHECK(answer.unplaced.empty());
  CHECK(answer.stays.front().occupied.to > at(answer, "morning.bake").end + 30);
}

TEST_CASE("a bake that would end after the shift begins on the next day instead") {
  Problem shop = small_shop(3);
  add_unit(shop, "0001", "long", 460, 5);
  const Answer answer = planned(shop);
  REQUIRE(answer.unplaced.size() ==
          1);  // load, bake and unload do not fit 480 minutes of watch with a break in the way
  CHECK(answer.unplaced.front().by == "flash1 to coat2 of 0001");
  Problem shorter = small_shop(3);
  add_unit(shorter, "0001", "long", 435, 15);
  const Answer fits = planned(shorter);
  CHECK(fits.unplaced.empty());
  CHECK(at(fits, "long.bake").start >= 600);
}

TEST_CASE("units go into the oven shortly before the bake, not the evening before") {
  Problem shop = small_shop(3);
  add_unit(shop, "0001", "long", 380, 15);
  const Answer answer = planned(shop);
  CHECK(at(answer, "long.bake").start - at(answer, "0001.load").end <= 60);
}

TEST_CASE("a bake longer than anybody is within call is refused with that reason") {
  Problem shop = small_shop(5);
  add_unit(shop, "0001", "endless", 500, 15);
  add_unit(shop, "0002", "short", 60, 15);
  const Answer answer = planned(shop);
  REQUIRE(answer.unplaced.size() == 1);
  CHECK(answer.unplaced.front().unit == "0001");
  CHECK(answer.unplaced.front().obstacle == Obstacle::watch);
  CHECK(answer.unplaced.front().reason.find("on shift for 8 h at most") != std::string::npos);
}

TEST_CASE("power that goes off sooner than the bake ends is named") {
  Problem shop = small_shop(2);
  shop.ovens.front().powered = {{0, 100}, {600, 700}};
  add_unit(shop, "0001", "morning", 120, 15);
  const Answer answer = planned(shop);
  REQUIRE(answer.unplaced.size() == 1);
  CHECK(answer.unplaced.front().obstacle == Obstacle::watch);
  CHECK(answer.unplaced.front().by == "cabinet");
}

TEST_CASE("a shop without a sprayer, a booth or room for the vapour says which is missing") {
  const auto obstacle = [](Problem shop) {
    add_unit(shop, "0001", "morning", 60, 15);
    const Answer answer = planned(shop);
    REQUIRE(answer.unplaced.size() == 1);
    return answer.unplaced.front();
  };
  Problem no_sprayer = small_shop(1);
  for (Person& person : no_sprayer.people) std::erase(person.skills, "spray");
  CHECK(obstacle(no_sprayer).obstacle == Obstacle::skill);
  CHECK(obstacle(no_sprayer).by == "spray");
  Problem no_booth = small_shop(1);
  std::erase_if(no_booth.stations, [](const Station& s) { return s.id == "booth"; });
  CHECK(obstacle(no_booth).obstacle == Obstacle::station);
  Problem no_air = small_shop(1);
  no_air.capacities.front().steps = {{0, 50}};
  CHECK(obstacle(no_air).obstacle == Obstacle::capacity);
  CHECK(obstacle(no_air).by == "vapour");
}

TEST_CASE("a window no crew can meet leaves the unit out and names the gap") {
  Problem shop = small_shop(2);
  add_unit(shop, "0001", "morning", 60, 15);
  // Masking for 30 min must come between the oven and the coat, which has to follow within 15.
  Operation mask = work("0001.mask", 30, "test");
  mask.unit = "0001";
  shop.operations.push_back(mask);
  shop.gaps.push_back({"mask after unloading", "0001.unload", "0001.mask", 0, std::nullopt});
  shop.gaps.push_back({"coat after masking", "0001.mask", "0001.coat1", 0, std::nullopt});
  const Answer answer = planned(shop);
  REQUIRE(answer.unplaced.size() == 1);
  CHECK(answer.unplaced.front().obstacle == Obstacle::cycle);
  CHECK(answer.unplaced.front().reason.find("unload to coat1 of 0001 (at most 15 min)") != std::string::npos);
  CHECK(answer.placements.empty());
}

TEST_CASE("late is an answer, and the most urgent unit is served first") {
  Problem shop = small_shop(3);
  for (const char* id : {"0001", "0002", "0003"}) add_unit(shop, id, std::string("load of ") + id, 60, 15);
  shop.units[2].due = 185;
  shop.units[0].due = 190;
  const Answer answer = planned(shop);
  REQUIRE(answer.late.size() == 1);
  CHECK(answer.late.front().unit == "0001");
  CHECK(at(answer, "load of 0003.bake").start < at(answer, "load of 0001.bake").start);
}

TEST_CASE("among equal due minutes the higher priority goes first, then the smaller serial") {
  Problem shop = small_shop(3);
  for (const char* id : {"0001", "0002", "0003"}) add_unit(shop, id, std::string("load of ") + id, 60, 15);
  shop.units[2].priority = 5;
  const Answer answer = planned(shop);
  CHECK(at(answer, "load of 0003.bake").start < at(answer, "load of 0001.bake").start);
  CHECK(at(answer, "load of 0001.bake").start < at(answer, "load of 0002.bake").start);
}

TEST_CASE(
    "work that may pause waits out the break, other work does not begin before it unless it ends before it") {
  Problem shop = small_shop(1);
  shop.people.resize(1);
  shop.units.push_back({"u", std::nullopt, 0, 1, {}});
  shop.operations = {work("long", 300, "test")};
  shop.operations.front().pausable = true;
  CHECK(at(planned(shop), "long").end == 330);
  shop.operations.front().pausable = false;
  CHECK(planned(shop).unplaced.front().obstacle == Obstacle::shift);
  shop.operations.front().length = 210;
  shop.operations.push_back(work("before", 40, "test"));
  shop.gaps = {{"", "before", "long", 0, std::nullopt}};
  CHECK(at(planned(shop), "long").start == 270);
}

TEST_CASE("two people who must lift together pause together") {
  Problem shop = small_shop(1);
  shop.people[1].breaks = {{100, 110}};
  shop.units.push_back({"u", std::nullopt, 0, 1, {}});
  shop.operations = {work("lift", 200, "test")};
  shop.operations.front().people = 2;
  shop.operations.front().pausable = true;
  CHECK(at(planned(shop), "lift").end == 210);
}

TEST_CASE("vapour that lingers keeps the next coat waiting") {
  Problem shop = small_shop(1);
  shop.stations.front().places = 2;
  shop.units.push_back({"u", std::nullopt, 0, 1, {}});
  shop.operations = {work("a", 10, "spray"), work("b", 10, "spray")};
  for (Operation& op : shop.operations) op.demands = {{"vapour", 60, 15}};
  const Answer answer = planned(shop);
  CHECK(at(answer, "b").start == 25);
}

TEST_CASE("a bake whose heat may not be on beside a coat waits until the last vapour has gone") {
  Problem shop = small_shop(2);
  shop.capacities.push_back({"sparks", {{0, 10}}});
  for (const char* id : {"0001", "0002"}) add_unit(shop, id, std::string("load of ") + id, 60, 120);
  for (Operation& op : shop.operations) {
    if (op.skill == "spray") op.demands.push_back({"sparks", 1, 30});
    if (op.id.ends_with(".bake")) op.demands.push_back({"sparks", 10, 0});
  }
  const Answer answer = planned(shop);
  CHECK(answer.unplaced.empty());
}

TEST_CASE("two ovens take two loads at once") {
  Problem shop = small_shop(1);
  shop.ovens.push_back({"second cabinet", {{0, 600}}, false, 0, {}, {}});
  for (const char* id : {"0001", "0002"}) add_unit(shop, id, std::string("load of ") + id, 100, 60);
  for (Load& load : shop.loads) load.ovens = {"cabinet", "second cabinet"};
  const Answer answer = planned(shop);
  CHECK(answer.unplaced.empty());
  CHECK(answer.stays[0].oven != answer.stays[1].oven);
}

TEST_CASE("a load too large for one shift leaves its least urgent units out and says why") {
  Problem shop = small_shop(4);
  for (int i = 10; i < 40; ++i) add_unit(shop, "00" + std::to_string(i), "big", 200, 15);
  const Answer answer = planned(shop);
  CHECK(!answer.unplaced.empty());
  CHECK(answer.placements.size() >
        4 * 9);  // one coat at a time for the vapour: 205 min after the bake, 40 min a unit
  CHECK(at(answer, "0010.coat2").end > 0);  // the most urgent is in
  for (const Unplaced& u : answer.unplaced) CHECK(!u.reason.empty());
}

TEST_CASE("a planner told to stop leaves no unit half done and says which it did not come to") {
  Problem shop = small_shop(10);
  for (int i = 10; i < 30; ++i) {
    const std::string id = "00" + std::to_string(i);
    add_unit(shop, id, "load of " + id, 60, 15);
  }
  int asked = 0;
  const auto result = plan(shop, {[&] { return ++asked < 3; }});
  REQUIRE(result.ok());
  CHECK(violations(shop, *result).empty());
  REQUIRE(!result->unplaced.empty());
  CHECK(result->unplaced.front().obstacle == Obstacle::stopped);
}

TEST_CASE("whatever order the queue is written in, the timetable is the same") {
  CHECK(rc::check("reordering changes nothing", [](std::uint32_t seed) {
    const Problem problem = planted(seed, seed % 3 == 0 ? Window::tight : Window::wide);
    const auto a = plan(problem), b = plan(shuffled(problem, seed + 1));
    RC_ASSERT(a.ok());
    RC_ASSERT(b.ok());
    RC_ASSERT(starts(*a) == starts(*b));
  }));
}

TEST_CASE(
    "five hundred units in loads of four are planned in a few thousand looks, each load within its day") {
  Problem shop = small_shop(400);
  for (int i = 1000; i < 1500; ++i)
    add_unit(shop, std::to_string(i), "load " + std::to_string(i / 4), 120, 20);
  const auto answer = plan(shop);
  REQUIRE(answer.ok());
  CHECK(answer->unplaced.empty());
  CHECK(answer->placements.size() == 500 * 8 + 125);
  CHECK(answer->finish < 600 * 130);  // one oven: about a load a day
}

TEST_CASE("a thousand random shops around a hidden plan: every unit finds its place and no rule is broken") {
  int units = 0;
  for (std::uint32_t seed = 1; seed <= 1000; ++seed) {
    const Problem problem = planted(seed, seed % 3 == 0 ? Window::tight : Window::wide);
    const auto answer = plan(problem);
    REQUIRE(answer.ok());
    units += static_cast<int>(problem.units.size());
    const auto broken = violations(problem, *answer);
    CHECK_MESSAGE(broken.empty(), "seed ", seed, ": ", broken.empty() ? "" : broken.front());
    CHECK_MESSAGE(answer->unplaced.empty(), "seed ", seed, ": ",
                  answer->unplaced.empty() ? "" : answer->unplaced.front().reason);
  }
  CHECK(units > 2000);
}

}  // namespace dampward::line::test
