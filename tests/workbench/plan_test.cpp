#include "workbench/plan.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "tests/workbench/demo_shop.h"

namespace dampward::workbench::test {
namespace {

const UnitPlan* find_unit(const Plan& plan, const std::string& serial) {
  const auto found = std::find_if(plan.units.begin(), plan.units.end(),
                                  [&](const UnitPlan& unit) { return unit.unit.text == serial; });
  return found == plan.units.end() ? nullptr : &*found;
}

const Refusal* find_refusal(const Plan& plan, const std::string& serial) {
  const auto found = std::find_if(plan.refused.begin(), plan.refused.end(),
                                  [&](const Refusal& refusal) { return refusal.unit.text == serial; });
  return found == plan.refused.end() ? nullptr : &*found;
}

}  // namespace

TEST_CASE("every unit of the queue is either treated or refused with a reason and a way out") {
  const Plan plan = plan_of(demo_workshop(), demo_records());
  CHECK(plan.queued == 14);
  CHECK(plan.units.size() + plan.refused.size() == plan.queued);
  for (const Refusal& refusal : plan.refused) {
    CHECK_FALSE(refusal.reason.empty());
    CHECK_FALSE(refusal.settle.empty());
  }
}

TEST_CASE("the demo shows a refused unit, a unit kept from heat by ignorance, and both ovens at work") {
  const Plan plan = plan_of(demo_workshop(), demo_records());
  REQUIRE(find_refusal(plan, "TD-0801") != nullptr);
  CHECK(find_refusal(plan, "TD-0801")->reason.find("black potted filter block") != std::string::npos);
  const UnitPlan* unmeasured = find_unit(plan, "TD-0603");
  REQUIRE(unmeasured != nullptr);
  CHECK(unmeasured->no_heat);
  CHECK(unmeasured->measure.find("scraping") != std::string::npos);
  REQUIRE(unmeasured->saves.has_value());
  CHECK(*unmeasured->saves > 1 * hour);
  std::set<std::string> ovens;
  for (const Load& load : plan.loads) ovens.insert(load.oven.text);
  CHECK(ovens == std::set<std::string>{"cabinet", "locker"});
}

TEST_CASE("no part in any load comes nearer to its limit than the margin it asks for, nor above it") {
  const Plan plan = plan_of(demo_workshop(), demo_records());
  REQUIRE_FALSE(plan.loads.empty());
  for (const Load& load : plan.loads) {
    for (const PartInOven& part : load.parts) {
      CHECK_MESSAGE(part.peak + 5 * kelvin <= part.limit + 1e-6 * kelvin, part.unit.text << " " << part.name);
    }
    CHECK(load.hold >= load.hold_nominal);
  }
}

TEST_CASE("every first coat lies in its window and the last flash is over before it closes") {
  const Plan plan = plan_of(demo_workshop(), demo_records());
  for (const Window& window : plan.windows) {
    const auto after = Duration::si(static_cast<double>((window.first_coat - window.leaves_oven).count()));
    CHECK(after >= window.opens_after - 1 * second);
    const UnitPlan* unit = find_unit(plan, window.unit.text);
    REQUIRE(unit != nullptr);
    Instant last_flash{};
    for (const UnitStep& step : unit->steps) {
      if (step.id.find("flash") != std::string::npos) last_flash = std::max(last_flash, step.ends);
    }
    CHECK(Duration::si(static_cast<double>((last_flash - window.leaves_oven).count())) <=
          window.closes_after + 1 * second);
  }
}

TEST_CASE("a case closes no sooner than 24 h after the last film is dry, and the re-check waits 72 h") {
  // NAVAIR 01-1A-509-3, as told in data/coatings: 24 h of airing, constants settle within 72 h.
  const Plan plan = plan_of(demo_workshop(), demo_records());
  for (const UnitPlan& unit : plan.units) {
    Instant dry{}, closed{}, rechecked{};
    for (const UnitStep& step : unit.steps) {
      if (step.id.ends_with(".film_dry")) dry = step.ends;
      if (step.id.ends_with(".reassemble")) closed = step.starts;
      if (step.id.ends_with(".recheck")) rechecked = step.starts;
    }
    CHECK(closed - dry >= std::chrono::hours(24));
    CHECK(rechecked - dry >= std::chrono::hours(72));
  }
}

TEST_CASE("the order of the queue file changes nothing") {
  HandedRecords records = demo_records();
  const Plan plan = plan_of(demo_workshop(), records);
  std::reverse(records.units.units.begin(), records.units.units.end());
  const Plan other = plan_of(demo_workshop(), records);
  REQUIRE(plan.units.size() == other.units.size());
  for (std::size_t i = 0; i < plan.units.size(); ++i) {
    CHECK(plan.units[i].unit == other.units[i].unit);
    CHECK(plan.units[i].done == other.units[i].done);
  }
}

TEST_CASE("an empty queue is an empty plan") {
  HandedRecords records = demo_records();
  records.units.units.clear();
  const Plan plan = plan_of(demo_workshop(), records);
  CHECK(plan.units.empty());
  CHECK(plan.refused.empty());
  CHECK(plan.loads.empty());
}

// 29 CFR 1910.107(c)(6), in a summary: nothing that can light vapour within 20 ft of solvent work.
TEST_CASE("an oven in the spray room, or at a distance nobody wrote down, is never hot while anybody coats") {
  for (const bool same_room : {true, false}) {
    Workshop workshop = demo_workshop();
    for (auto& oven : workshop.shop.ovens) {
      if (same_room) oven.room = workshop.shop.spray.room;
      oven.distance_to_spray.reset();
    }
    const Plan plan = plan_of(workshop, demo_records());
    CHECK_FALSE(plan.loads.empty());
    for (const Load& load : plan.loads) {
      for (const UnitPlan& unit : plan.units) {
        for (const UnitStep& step : unit.steps) {
          const bool solvent = step.id.find(".coat") != std::string::npos ||
                               step.id.find(".flash") != std::string::npos ||
                               step.id.find(".touch_up") != std::string::npos;
          if (!solvent) continue;
          CHECK_MESSAGE((step.ends < load.starts || step.starts >= load.last_out), load.id, " ", step.id);
        }
      }
    }
  }
}

// Decay in one mixed room: V/(m Q) ln 10 until nine tenths are gone (ACGIH dilution equations, from memory).
TEST_CASE(
    "the purge lasts until a tenth of what the air may hold is left, and hot ovens nearby wait for it") {
  Workshop workshop = demo_workshop();
  const shop::SprayPlace& place = workshop.shop.spray;
  const Duration tenth =
      place.length * place.width * place.height / (place.mixing * *place.fan) * std::log(10.0);
  const Plan plan = plan_of(workshop, demo_records());
  REQUIRE(plan.room.purge);
  CHECK(plan.room.purge->in(minute) == doctest::Approx(tenth.in(minute)).epsilon(1e-9));
  bool any = false;
  for (const line::Operation& operation : plan.problem.operations) {
    if (!operation.solvent) continue;
    any = true;
    CHECK(static_cast<double>(operation.clears) >= tenth.in(minute));
    CHECK(static_cast<double>(operation.clears) < tenth.in(minute) + 1);
  }
  CHECK(any);
}

TEST_CASE("a place with no fresh air sprays nothing and says what fan it would take") {
  Workshop workshop = demo_workshop();
  workshop.shop.spray.opening_to_outside = false;
  const Plan plan = plan_of(workshop, demo_records());
  CHECK(plan.units.empty());
  REQUIRE_FALSE(plan.refused.empty());
  CHECK(find_refusal(plan, "TD-0107")->reason.find("lower flammable limit") != std::string::npos);
}

TEST_CASE("a room hotter than the lacquer's hottest surface coats nothing") {
  HandedRecords records = demo_records();
  for (auto& reading : records.readings) {
    reading.temperature = Temperature::celsius(39);
    reading.humidity = RelativeHumidity::percent(45);
  }
  const Plan plan = plan_of(demo_workshop(), records);
  CHECK(plan.units.empty());
  CHECK(find_refusal(plan, "TD-0107")->reason.find("never cools") != std::string::npos);
}

TEST_CASE("a stricter heat limit never raises a set point, and unmeasured wax goes without heat") {
  Workshop workshop = demo_workshop();
  equipment::Kind kind = *workshop.kinds.find("river_radio");
  for (auto& part : kind.parts) {
    if (part.id.text == "paper_capacitors") part.limit.reset();
  }
  workshop.kinds.put(kind);
  const Plan plan = plan_of(workshop, demo_records());
  const UnitPlan* unit = find_unit(plan, "TD-0107");
  REQUIRE(unit != nullptr);
  CHECK(unit->no_heat);
}

TEST_CASE("a flame in the spray room, or no way out of it, stops every coat") {
  Workshop flame = demo_workshop();
  flame.shop.spray.heat_sources.push_back({"gas burner", flame.shop.spray.room, 0.5 * metre});
  CHECK(plan_of(flame, demo_records()).units.empty());
  Workshop shut = demo_workshop();
  shut.shop.spray.ways_out = 0;
  CHECK(plan_of(shut, demo_records()).units.empty());
}

TEST_CASE("a lacquer that sets isocyanate free is refused: this plan cannot clear the room for it") {
  Workshop workshop = demo_workshop();
  materials::Lacquer lacquer = *workshop.lacquers.find(workshop.shop.lacquer);
  lacquer.isocyanate = true;
  workshop.lacquers.put(lacquer);
  CHECK(plan_of(workshop, demo_records()).units.empty());
}

TEST_CASE("a lacquer or thinner nobody knows the solvents of is not used") {
  Workshop unknown_lacquer = demo_workshop();
  materials::Lacquer lacquer = *unknown_lacquer.lacquers.find(unknown_lacquer.shop.lacquer);
  lacquer.composition.clear();
  unknown_lacquer.lacquers.put(lacquer);
  CHECK(plan_of(unknown_lacquer, demo_records()).units.empty());
  Workshop unknown_thinner = demo_workshop();
  materials::Liquid thinner = *unknown_thinner.thinners.find("delta_thinner");
  thinner.composition.clear();
  unknown_thinner.thinners.put(thinner);
  CHECK(plan_of(unknown_thinner, demo_records()).units.empty());
}

TEST_CASE("a twelve-hour shift at the gun halves the exposure limits") {
  // Brief and Scala: 12 h leaves 0.5; the demo's painter works 9 h, which leaves 15/16 · 8/9 = 0.833.
  Workshop workshop = demo_workshop();
  const double usual = *plan_of(workshop, demo_records()).room.exposure_index;
  for (auto& person : workshop.shop.crew) {
    if (person.id.text != "painter") continue;
    for (auto& [day, spans] : person.shifts.days) spans = {{std::chrono::hours(7), std::chrono::hours(19)}};
  }
  const double longer = *plan_of(workshop, demo_records()).room.exposure_index;
  CHECK(longer == doctest::Approx(usual * (15.0 / 16 * 8 / 9) / 0.5).epsilon(0.001));
}

TEST_CASE(
    "an oven with too few hours of power is no oven: such units go without heat, not without treatment") {
  Workshop workshop = demo_workshop();
  for (auto& oven : workshop.shop.ovens) {
    for (auto& [day, spans] : oven.powered.days) spans = {{std::chrono::hours(9), std::chrono::hours(11)}};
  }
  const Plan plan = plan_of(workshop, demo_records());
  CHECK(plan.loads.empty());
  REQUIRE_FALSE(plan.units.empty());
  CHECK(find_unit(plan, "TD-0107")->no_heat_reason.find("one stretch") != std::string::npos);
}

TEST_CASE("a lot past its date by the last coat is named and not counted") {
  HandedRecords records = demo_records();
  for (auto& lot : records.lots)
    lot.expires = Date(std::chrono::year(2027), std::chrono::month(2), std::chrono::day(1));
  const Plan plan = plan_of(demo_workshop(), records);
  CHECK(plan.stock.front().in_stock.si() == 0);
  CHECK(plan.stock.front().is_short);
  CHECK_FALSE(plan.stock.front().expired.empty());
}

TEST_CASE("thin mountain air asks for a larger fan: fire, refusal and need are reckoned in one air") {
  Workshop workshop = demo_workshop();
  workshop.shop.spray.fan = 120 * cubic_metre_per_minute;
  const VolumeFlow low = plan_of(workshop, demo_records()).room.fan_fire;
  workshop.shop.site.altitude = 3000 * metre;
  CHECK(plan_of(workshop, demo_records()).room.fan_fire > 1.3 * low);
}

TEST_CASE("an oven that is said never to swing is doubted, and a set over 23 kg is not lifted by one") {
  Workshop workshop = demo_workshop();
  for (auto& oven : workshop.shop.ovens) oven.swing = TemperatureStep{};
  const Plan plan = plan_of(workshop, demo_records());
  const auto told = [&](const char* words) {
    return std::any_of(plan.warnings.begin(), plan.warnings.end(),
                       [&](const std::string& warning) { return warning.find(words) != std::string::npos; });
  };
  CHECK(told("never to swing"));
  CHECK(told("3 people lift it"));
}

TEST_CASE("a part that must be isolated keeps the whole unit closed") {
  Workshop workshop = demo_workshop();
  equipment::Kind kind = *workshop.kinds.find("river_phone");
  kind.parts.front().hazards.push_back(HazardId("H06"));  // mercury
  workshop.kinds.put(kind);
  const Plan plan = plan_of(workshop, demo_records());
  REQUIRE(find_refusal(plan, "TD-0311") != nullptr);
  CHECK(find_refusal(plan, "TD-0311")->settle.find("licensed hand") != std::string::npos);
}

TEST_CASE("shortage is told before work begins, and lots are used first expired first") {
  HandedRecords records = demo_records();
  for (auto& lot : records.lots) lot.amount = 0.1 * litre;
  const Plan plan = plan_of(demo_workshop(), records);
  REQUIRE_FALSE(plan.stock.empty());
  CHECK(plan.stock.front().is_short);
  CHECK(plan.warnings.front().find("short") != std::string::npos);
  CHECK(plan.stock.front().lots.front().text == "V-26-031");
}

TEST_CASE("cautions cover every step taken and each defers to local codes and licensed practice") {
  const Plan plan = plan_of(demo_workshop(), demo_records());
  CHECK(plan.cautions.size() > 30);
  for (const Caution& caution : plan.cautions) CHECK_FALSE(caution.defer.empty());
  for (const char* id : {"H01", "H13", "H14", "H18", "H25", "H33", "H34", "H47", "H49"}) {
    CHECK_MESSAGE(std::any_of(plan.cautions.begin(), plan.cautions.end(),
                              [&](const Caution& caution) { return caution.id.text == id; }),
                  id);
  }
}

TEST_CASE("air enough against fire is never told as enough for people") {
  const Plan plan = plan_of(demo_workshop(), demo_records());
  REQUIRE(plan.room.fan_people.has_value());
  CHECK(*plan.room.fan_people > 10 * plan.room.fan_fire);
  CHECK(plan.room.respirator.find("full face") != std::string::npos);
}

}  // namespace dampward::workbench::test
