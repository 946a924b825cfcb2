// What the trade says, held against what the program does. Every fact here is common practice, no source: a test asserts that
// the program agrees, or that it disagrees in the way docs/theory says.

#include <doctest/doctest.h>

#include <algorithm>

#include "core/drying/set_point.h"
#include "tests/workbench/demo_shop.h"

namespace dampward::workbench::test {
namespace {

const UnitPlan& unit_of(const Plan& plan, const std::string& serial) {
  const auto found = std::find_if(plan.units.begin(), plan.units.end(),
                                  [&](const UnitPlan& unit) { return unit.unit.text == serial; });
  REQUIRE(found != plan.units.end());
  return *found;
}

std::size_t place_of(const UnitPlan& unit, const std::string& code) {
  const auto found = std::find_if(unit.steps.begin(), unit.steps.end(),
                                  [&](const UnitStep& step) { return step.id.ends_with("." + code); });
  REQUIRE(found != unit.steps.end());
  return static_cast<std::size_t>(found - unit.steps.begin());
}

bool mentions(const std::vector<std::string>& lines, const std::string& words) {
  return std::any_of(lines.begin(), lines.end(),
                     [&](const std::string& line) { return line.find(words) != std::string::npos; });
}

}  // namespace

TEST_CASE("dry at up to 71 °C for about 3 h, an hour more for each 10 °F less (common practice, no source)") {
  for (int step = 0; step <= 4; ++step) {
    const auto rule = drying::rule_hours(Temperature::fahrenheit(160 - 10 * step));
    REQUIRE(rule.has_value());
    CHECK(rule->in(hour) == doctest::Approx(3 + step));
  }
  CHECK_FALSE(drying::rule_hours(Temperature::celsius(72)).has_value());
  CHECK_FALSE(drying::rule_hours(Temperature::celsius(48)).has_value());
}

TEST_CASE("the plan shows the rule beside its own hold and keeps its own (documented disagreement)") {
  const Plan plan = plan_of(demo_workshop(), demo_records());
  for (const Load& load : plan.loads) {
    REQUIRE(load.rule.has_value());
    CHECK(load.hold != *load.rule);
  }
}

TEST_CASE("wax may run above 71 °C, and sometimes at it (common practice, no source)") {
  const auto& table = demo_workshop().materials;
  const auto& micro = table.find("wax_micro")->heat_limit->limit.value;
  CHECK(micro.low < Temperature::celsius(71));
  CHECK(micro.typical > Temperature::celsius(71));
  // Documented disagreement: published paraffins run far below it, so unmeasured wax is never baked.
  CHECK(table.find("wax_paraffin")->heat_limit->limit.value.low < Temperature::celsius(49));
}

TEST_CASE(
    "the control thermostat hangs amid the load and a separate thermometer checks it (common practice, no "
    "source)") {
  Workshop workshop = demo_workshop();
  for (auto& oven : workshop.shop.ovens) oven.control_amid_load = oven.separate_thermometer = false;
  const Plan plan = plan_of(workshop, demo_records());
  CHECK(mentions(plan.warnings, "amid the load"));
  CHECK(mentions(plan.warnings, "separate thermometer"));
}

TEST_CASE(
    "two parts lacquer to one of thinner for the gun, unthinned for the brush (common practice, no source)") {
  const auto& varnish = *demo_workshop().lacquers.find("phenolic_tung_varnish_fungicidal");
  CHECK(varnish.thinner_parts_for_spray == doctest::Approx(0.5));
  CHECK(varnish.thinner_parts_for_brush == 0);
  // Documented disagreement: a published minimum of 50 % non-volatile; the mix comes out near 40 and the plan says so.
  CHECK(mentions(plan_of(demo_workshop(), demo_records()).warnings, "50 %"));
}

TEST_CASE("three coats by hand gun 15 to 20 min apart, two by power gun (common practice, no source)") {
  const auto& varnish = *demo_workshop().lacquers.find("delta_varnish");
  for (const auto& rule : varnish.coats) {
    if (rule.method == materials::Method::hand_gun) CHECK(rule.coats == 3);
    if (rule.method == materials::Method::power_gun) CHECK(rule.coats == 2);
    if (rule.method == materials::Method::brush) continue;
    CHECK(rule.flash.low.in(minute) == doctest::Approx(15));
    CHECK(rule.flash.high.in(minute) == doctest::Approx(20));
  }
}

TEST_CASE(
    "the first coat goes on warm, but only once the published 38 °C allows it (documented disagreement)") {
  const Plan plan = plan_of(demo_workshop(), demo_records());
  REQUIRE_FALSE(plan.windows.empty());
  for (const Window& window : plan.windows) {
    CHECK(window.trade_opens_after.si() == 0);
    CHECK(window.opens_after > window.trade_opens_after);
  }
  CHECK(mentions(plan.warnings, "Common practice coats warm"));
}

TEST_CASE("film on dirt peels: every unit is cleaned before it is coated (common practice, no source)") {
  const Plan plan = plan_of(demo_workshop(), demo_records());
  for (const UnitPlan& unit : plan.units) {
    CHECK(place_of(unit, "clean") < place_of(unit, "coat1"));
    CHECK(place_of(unit, "salt_proof") < place_of(unit, "coat1"));
  }
}

TEST_CASE("adjustments stick if they are coated: tuning parts are masked (common practice, no source)") {
  const Plan plan = plan_of(demo_workshop(), demo_records());
  CHECK(mentions(route::lines_of(unit_of(plan, "TD-0107").lists.mask), "gang"));
}

TEST_CASE("a board of many jacks is brushed assembled (common practice, no source)") {
  const Plan plan = plan_of(demo_workshop(), demo_records());
  CHECK(unit_of(plan, "TD-0401").way == "brush_assembled");
  CHECK_FALSE(unit_of(plan, "TD-0401").way_reason.empty());
}

}  // namespace dampward::workbench::test
