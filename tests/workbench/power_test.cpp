#include <doctest/doctest.h>

#include <algorithm>

#include "tests/workbench/demo_shop.h"

namespace dampward::workbench::test {
namespace {

Workshop with_supply(double gives_kw, double always_on_kw) {
  Workshop workshop = demo_workshop();
  workshop.shop.site.power = shop::PowerSupply{gives_kw * kilowatt, always_on_kw * kilowatt};
  return workshop;
}

// Whether two ovens of the plan are ever hot at once.
bool hot_at_once(const Plan& plan) {
  for (const Load& a : plan.loads) {
    for (const Load& b : plan.loads) {
      if (a.oven != b.oven && a.starts < b.last_out && b.starts < a.last_out) return true;
    }
  }
  return false;
}

}  // namespace

// The cabinet takes 2.4 kW and the locker 0.4: their own plates.
TEST_CASE("ovens that a generator cannot carry together take turns") {
  const Plan free = plan_of(demo_workshop(), demo_records());
  CHECK_FALSE(free.power.has_value());
  CHECK(hot_at_once(free));
  const Plan limited = plan_of(with_supply(3.2, 0.5), demo_records());
  CHECK_FALSE(hot_at_once(limited));
  CHECK(limited.units.size() == free.units.size());
  REQUIRE(limited.power.has_value());
  CHECK(limited.power->peak == 2.9 * kilowatt);
  const Plan enough = plan_of(with_supply(3.3, 0.5), demo_records());
  CHECK(hot_at_once(enough));
  CHECK(enough.power->peak == 3.3 * kilowatt);
}

TEST_CASE("an oven that alone takes more than is left is not used, and its units are told why") {
  const Plan plan = plan_of(with_supply(2.5, 0.5), demo_records());
  for (const Load& load : plan.loads) CHECK(load.oven.text == "locker");
  const auto cold = std::find_if(plan.units.begin(), plan.units.end(),
                                 [](const UnitPlan& unit) { return unit.unit.text == "TD-0311"; });
  REQUIRE(cold != plan.units.end());
  CHECK(cold->no_heat_reason.find("takes 2.4 kW, and the supply has 2.0 kW left") != std::string::npos);
}

TEST_CASE("a gun that alone takes more than is left is refused by the rule of power") {
  Workshop workshop = with_supply(3.2, 0.5);
  for (shop::Gun& gun : workshop.shop.guns) gun.draws = 4 * kilowatt;
  const Plan plan = plan_of(workshop, demo_records());
  CHECK(plan.units.empty());
  CHECK(std::any_of(plan.refused.begin(), plan.refused.end(),
                    [](const Refusal& refusal) { return refusal.rule == Rule::power; }));
}

}  // namespace dampward::workbench::test
