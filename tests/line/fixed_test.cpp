#include <doctest/doctest.h>

#include <algorithm>

#include "checker.h"
#include "core/line/planner.h"
#include "shops.h"

// What is fixed, what the present minute forbids, and solvent beside a hot oven: docs/formats/timetable.md, "Rules".
namespace dampward::line::test {
namespace {

Answer planned(const Problem& problem) {
  const auto result = plan(problem);
  REQUIRE_MESSAGE(result.ok(), to_text(result.problems().front()));
  return *result;
}

const Placement& at(const Answer& answer, const std::string& id) {
  const auto it = std::find_if(answer.placements.begin(), answer.placements.end(),
                               [&](const Placement& p) { return p.operation == id; });
  REQUIRE_MESSAGE(it != answer.placements.end(), id);
  return *it;
}

Problem one_near_oven(Minute window, Minute cools) {
  Problem shop = small_shop(3);
  shop.ovens[0].near_solvent = true;
  shop.ovens[0].cools = cools;
  add_unit(shop, "0001", "morning", 60, window);
  for (Operation& op : shop.operations) {
    op.solvent = op.id.find("coat") != std::string::npos || op.id.find("flash") != std::string::npos;
    if (op.solvent) op.clears = 12;
  }
  return shop;
}

}  // namespace

TEST_CASE("what is fixed stays where it is, and nothing else starts before the present minute") {
  Problem shop = small_shop(2);
  for (const char* id : {"0001", "0002"}) add_unit(shop, id, std::string("load of ") + id, 60, 60);
  shop.now = 40;
  shop.fixed = {{"0001.test", 3, 23, {"second"}, "bench"}, {"0001.load", 30, 42, {"second"}, ""}};
  const Answer answer = planned(shop);
  CHECK(answer.unplaced.empty());
  CHECK(at(answer, "0001.test").start == 3);
  CHECK(at(answer, "0001.load").end == 42);
  CHECK(at(answer, "load of 0001.bake").start >= 42);
  for (const Placement& p : answer.placements) {
    if (p.operation != "0001.test" && p.operation != "0001.load") CHECK_MESSAGE(p.start >= 40, p.operation);
  }
  // The oven is taken from minute 30, so the other load waits.
  CHECK(at(answer, "0002.load").start >= at(answer, "0001.unload").end);
}

TEST_CASE("a unit that went in and can never come out keeps its oven to the horizon") {
  Problem shop = small_shop(2);
  for (const char* id : {"0001", "0002"}) add_unit(shop, id, std::string("load of ") + id, 60, 60);
  shop.fixed = {{"0001.test", 0, 20, {"first"}, "bench"}, {"0001.load", 30, 35, {"first"}, ""}};
  for (Operation& op : shop.operations) {
    if (op.id == "0001.mark") op.skill = "engraving";  // nobody has it
  }
  const Answer answer = planned(shop);
  REQUIRE(answer.unplaced.size() == 2);
  CHECK(answer.placements.size() == 2);
  REQUIRE(answer.stays.size() == 1);
  CHECK(answer.stays.front().occupied == Span{30, shop.horizon});
}

TEST_CASE(
    "a running bake that is fixed holds its oven until its unit is out, and the window counts from there") {
  Problem shop = small_shop(2);
  add_unit(shop, "0001", "morning", 60, 15);
  shop.now = 50;
  shop.fixed = {{"0001.test", 0, 20, {"first"}, "bench"},
                {"0001.load", 20, 25, {"first"}, ""},
                {"morning.bake", 25, 85, {}, ""}};
  const Answer answer = planned(shop);
  CHECK(answer.unplaced.empty());
  CHECK(at(answer, "0001.unload").start == 85);
  CHECK(at(answer, "0001.coat1").start - at(answer, "0001.unload").end <= 15);
}

TEST_CASE("solvent waits until a near oven is cold, cooling time and all") {
  const Answer answer = planned(one_near_oven(60, 20));
  CHECK(answer.unplaced.empty());
  CHECK(at(answer, "0001.coat1").start >= at(answer, "0001.unload").end + 20);
}

TEST_CASE("a near oven is not lit before the air is clear of the last coat") {
  Problem shop = one_near_oven(60, 20);
  add_unit(shop, "0002", "second load", 60, 60);
  for (Operation& op : shop.operations) {
    if (op.id.starts_with("0002.coat") || op.id.starts_with("0002.flash")) op.solvent = true, op.clears = 12;
  }
  const Answer answer = planned(shop);
  CHECK(answer.unplaced.empty());
  for (const char* bake : {"morning.bake", "second load.bake"}) {
    for (const Operation& op : shop.operations) {
      if (!op.solvent) continue;
      const Placement &hot = at(answer, bake), &wet = at(answer, op.id);
      const std::string unit = bake[0] == 'm' ? "0001" : "0002";
      const Minute cold = at(answer, unit + ".unload").end + 20;
      CHECK_MESSAGE((wet.end + 12 <= hot.start || wet.start >= cold), bake, " / ", op.id);
    }
  }
}

TEST_CASE("a window shorter than a near oven takes to cool is refused with the oven's name") {
  const Answer answer = planned(one_near_oven(15, 20));
  REQUIRE(answer.unplaced.size() == 1);
  CHECK(answer.unplaced.front().obstacle == Obstacle::solvent);
  CHECK(answer.unplaced.front().by == "cabinet");
  CHECK(answer.placements.empty());
}

TEST_CASE("the same shop with the oven far away coats at once") {
  Problem shop = one_near_oven(15, 20);
  shop.ovens[0].near_solvent = false;
  CHECK(planned(shop).unplaced.empty());
}

}  // namespace dampward::line::test
