#include <doctest/doctest.h>

#include <algorithm>
#include <string>

#include "tests/workbench/demo_shop.h"
#include "workbench/ladder.h"

namespace dampward::workbench::test {
namespace {

Workshop with_receiver_of(double low_kg, double typical_kg, double high_kg) {
  Workshop workshop = demo_workshop();
  equipment::Kind kind = *workshop.kinds.find("clinic_receiver");
  kind.mass.value = {low_kg * kilogram, typical_kg * kilogram, high_kg * kilogram};
  workshop.kinds.put(kind);
  return workshop;
}

// How many of the crew carry the clinic's receiver out of the oven or the dry box; 0: it is not in the plan.
std::size_t carriers(const Plan& plan) {
  for (const UnitPlan& unit : plan.units) {
    if (unit.unit.text != "TD-0204") continue;
    for (const UnitStep& step : unit.steps) {
      if (step.id == "r1.unload" || step.id == "r1.cabinet_out") return step.people.size();
    }
  }
  return 0;
}

const Refusal* refused(const Plan& plan) {
  const auto found = std::find_if(plan.refused.begin(), plan.refused.end(),
                                  [](const Refusal& refusal) { return refusal.unit.text == "TD-0204"; });
  return found == plan.refused.end() ? nullptr : &*found;
}

}  // namespace

// Its kind asks for two people whatever it weighs.
TEST_CASE("the heavier a set may be, the more people carry it out of the oven") {
  CHECK(carriers(plan_of(with_receiver_of(10, 15, 20), demo_records())) == 2);
  CHECK(carriers(plan_of(with_receiver_of(20, 25, 30), demo_records())) == 2);
  CHECK(carriers(plan_of(with_receiver_of(20, 25, 34), demo_records())) == 3);
}

TEST_CASE("a lift table that takes a set leaves it to as many as its kind asks for") {
  Workshop workshop = with_receiver_of(20, 30, 45);
  CHECK(carriers(plan_of(workshop, demo_records())) == 3);
  workshop.shop.site.lifts = 44 * kilogram;
  CHECK(carriers(plan_of(workshop, demo_records())) == 3);
  workshop.shop.site.lifts = 45 * kilogram;
  CHECK(carriers(plan_of(workshop, demo_records())) == 2);
}

TEST_CASE("what three people cannot lift is refused by the rule of lifting until a lift table takes it") {
  Workshop workshop = with_receiver_of(30, 40, 50);
  const Plan plan = plan_of(workshop, demo_records());
  REQUIRE(refused(plan) != nullptr);
  CHECK(refused(plan)->rule == Rule::lifting);
  workshop.shop.site.lifts = 50 * kilogram;
  CHECK(carriers(plan_of(workshop, demo_records())) == 2);
}

TEST_CASE("two people alone in the shop do not carry what takes three") {
  Workshop workshop = with_receiver_of(20, 25, 34);
  for (shop::Person& person : workshop.shop.crew) {
    if (person.id.text != "lead" && person.id.text != "painter")
      std::erase(person.skills, std::string("oven"));
  }
  const Plan plan = plan_of(workshop, demo_records());
  REQUIRE(refused(plan) != nullptr);
  CHECK(refused(plan)->rule == Rule::lifting);
  CHECK(refused(plan)->reason.find("3 people") != std::string::npos);
}

}  // namespace dampward::workbench::test
