#include <doctest/doctest.h>

#include <algorithm>

#include "tests/workbench/demo_shop.h"

namespace dampward::workbench::test {
namespace {

const StockNeed& need_of(const Plan& plan, const std::string& item) {
  const auto found =
      std::find_if(plan.stock.begin(), plan.stock.end(), [&](const auto& need) { return need.item == item; });
  REQUIRE(found != plan.stock.end());
  return *found;
}

Volume taken(const Plan& plan, const std::string& item) {
  Volume sum;
  for (const MixedPot& pot : plan.mixing) {
    for (const PotShare& share : pot.lots) {
      if (share.item == item) sum += share.amount;
    }
  }
  return sum;
}

}  // namespace

TEST_CASE("the pots hold what the stock is reckoned by, no litre more or less") {
  const Plan plan = plan_of(demo_workshop(), demo_records());
  REQUIRE_FALSE(plan.mixing.empty());
  Volume lacquer, thinner;
  for (const MixedPot& pot : plan.mixing) {
    lacquer += pot.lacquer.high;
    thinner += pot.thinner.high;
    CHECK(pot.missing.in(litre) == doctest::Approx(0));
    CHECK(pot.mix < pot.use_by);
  }
  CHECK(lacquer.in(litre) == doctest::Approx(need_of(plan, "delta_varnish").needed.high.in(litre)));
  CHECK(thinner.in(litre) == doctest::Approx(need_of(plan, "delta_thinner").needed.high.in(litre)));
  CHECK(taken(plan, "delta_varnish").in(litre) ==
        doctest::Approx(need_of(plan, "delta_varnish").needed.typical.in(litre)));
}

TEST_CASE(
    "every coat of the timetable lies between the mixing and the use-by of a pot that serves its unit") {
  const Plan plan = plan_of(demo_workshop(), demo_records());
  for (const UnitPlan& unit : plan.units) {
    for (const UnitStep& step : unit.steps) {
      if (step.id.find(".coat") == std::string::npos) continue;
      const bool served = std::any_of(plan.mixing.begin(), plan.mixing.end(), [&](const MixedPot& pot) {
        return pot.mix <= step.starts && step.ends <= pot.use_by &&
               std::find(pot.units.begin(), pot.units.end(), unit.unit) != pot.units.end();
      });
      CHECK_MESSAGE(served, unit.unit.text << " " << step.id);
    }
  }
}

TEST_CASE("a shelf that is too short is told with the litres to get before work begins") {
  HandedRecords records = demo_records();
  for (auto& lot : records.lots) lot.amount = 0.1 * litre;
  const Plan plan = plan_of(demo_workshop(), records);
  const StockNeed& varnish = need_of(plan, "delta_varnish");
  CHECK(varnish.is_short);
  CHECK((varnish.to_get + varnish.in_stock).in(litre) == doctest::Approx(varnish.needed.high.in(litre)));
  CHECK(std::any_of(plan.warnings.begin(), plan.warnings.end(), [](const std::string& warning) {
    return warning.find("is short") != std::string::npos &&
           warning.find("before work begins") != std::string::npos;
  }));
  CHECK(std::any_of(plan.mixing.begin(), plan.mixing.end(),
                    [](const MixedPot& pot) { return pot.missing > Volume{}; }));
}

}  // namespace dampward::workbench::test
