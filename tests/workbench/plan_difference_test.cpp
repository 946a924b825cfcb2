#include "workbench/plan_difference.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "tests/workbench/demo_shop.h"

namespace dampward::workbench::test {
namespace {

PlanDifference difference_when(const std::function<void(Workshop&)>& change) {
  Workshop changed = demo_workshop();
  change(changed);
  return plan_difference(plan_of(demo_workshop(), demo_records()), plan_of(changed, demo_records()), {});
}

}  // namespace

TEST_CASE("a plan does not differ from itself") {
  const PlanDifference none = difference_when([](Workshop&) {});
  CHECK(none.nothing_moved());
  CHECK(none.words == std::vector<std::string>{"Nothing in the plan moves."});
}

TEST_CASE("what one change takes, the change back gives again") {
  Workshop hot_store = demo_workshop();
  hot_store.shop.spray.heat_sources.front().distance = 2 * metre;
  const Plan open = plan_of(demo_workshop(), demo_records()), closed = plan_of(hot_store, demo_records());
  const PlanDifference there = plan_difference(open, closed, {}), back = plan_difference(closed, open, {});
  REQUIRE(there.lost.size() == open.units.size());
  CHECK(there.gained.empty());
  CHECK(there.lost.front().rule == "heat_near_solvent");
  CHECK(back.lost.empty());
  CHECK(back.gained.size() == there.lost.size());
  CHECK_FALSE(there.finish.has_value());
  CHECK(there.finishes.empty());
}

TEST_CASE("a faster fan moves the air's figures, and no bake") {
  const PlanDifference fan =
      difference_when([](Workshop& w) { w.shop.spray.fan = 90 * cubic_metre_per_minute; });
  REQUIRE(fan.room.has_value());
  CHECK(*fan.room->exposure_index.after < *fan.room->exposure_index.before);
  CHECK(fan.bakes.empty());
  CHECK(fan.peaks.empty());
}

TEST_CASE("the figures of a difference are those of the two plans") {
  Workshop fewer = demo_workshop();
  for (shop::Oven& oven : fewer.shop.ovens) {
    if (oven.lamps) oven.lamps->count = 3;
  }
  const Plan before = plan_of(demo_workshop(), demo_records()), after = plan_of(fewer, demo_records());
  const PlanDifference lamps = plan_difference(before, after, {});
  CHECK_FALSE(lamps.nothing_moved());
  for (const MovedFinish& moved : lamps.finishes) {
    const auto done = [&](const Plan& plan) {
      return std::find_if(plan.units.begin(), plan.units.end(),
                          [&](const auto& u) { return u.unit == moved.unit; })
          ->done;
    };
    CHECK(moved.done.before == done(before));
    CHECK(moved.done.after == done(after));
  }
}

}  // namespace dampward::workbench::test
