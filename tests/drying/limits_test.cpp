#include <doctest/doctest.h>
#include <rapidcheck.h>

#include "core/drying/measuring.h"
#include "sample.h"

using namespace dampward;
using namespace dampward::drying;

namespace {

PartLimit limit_of(const equipment::Part& part) {
  const auto answer = resolve_limit(part, sample::table());
  REQUIRE(std::holds_alternative<PartLimit>(answer));
  return std::get<PartLimit>(answer);
}

bool refused(const equipment::Part& part) {
  return std::holds_alternative<Refusal>(resolve_limit(part, sample::table()));
}

equipment::Part measured(double celsius) {
  equipment::Part wax = sample::part("coils", "wax_low", 20);
  wax.limit =
      equipment::GivenLimit{Temperature::celsius(celsius), std::nullopt, Mark::measured, "scraping melted"};
  return wax;
}

}  // namespace

TEST_CASE(
    "a part of unknown wax takes the lowest limit among the plausible ones, and says what a measurement "
    "would likely show") {
  equipment::Part coils = sample::part("coils", "wax_mid", 20);
  coils.materials.push_back(MaterialId("wax_low"));
  const PartLimit limit = limit_of(coils);
  CHECK(limit.limit == Temperature::celsius(46));
  CHECK(limit.allowed() == Temperature::celsius(36));
  CHECK(limit.material == MaterialId("wax_low"));
  CHECK(limit.from_ignorance);
  CHECK(limit.likely_if_measured == Temperature::celsius(75));
  CHECK(limit.best_if_measured == Temperature::celsius(85));
  CHECK(limit.settle.find("hot plate") != std::string::npos);
}

TEST_CASE("a melting point the shop measured rules over the table") {
  const PartLimit limit = limit_of(measured(63));
  CHECK(limit.limit == Temperature::celsius(63));
  CHECK(limit.margin == 10 * kelvin);
  CHECK(!limit.from_ignorance);
}

TEST_CASE("a limit nobody measured only ever lowers the table's") {
  equipment::Part part = measured(120);
  part.limit->mark = Mark::estimate;
  CHECK(limit_of(part).limit == Temperature::celsius(46));
  part.limit->limit = Temperature::celsius(40);
  CHECK(limit_of(part).limit == Temperature::celsius(40));
  CHECK(limit_of(part).margin == 15 * kelvin);
}

TEST_CASE("margins grow with doubt") {
  CHECK(default_margin(Mark::read) < default_margin(Mark::measured));
  CHECK(default_margin(Mark::measured) < default_margin(Mark::memory));
  CHECK(default_margin(Mark::doubtful) == default_margin(Mark::memory));
}

TEST_CASE("what nobody can name is never assumed safe") {
  CHECK(refused(sample::part("lump", "", 20)));
  CHECK(refused(sample::part("lump", "no_such_material", 20)));
  materials::MaterialTable table = sample::table();
  materials::Material mystery = *table.find("steel");
  mystery.id = MaterialId("mystery");
  mystery.heat_limit.reset();
  table.put(mystery);
  equipment::Part part = sample::part("lump", "steel", 20);
  part.materials.push_back(MaterialId("mystery"));
  const auto answer = resolve_limit(part, table);
  REQUIRE(std::holds_alternative<Refusal>(answer));
  CHECK(!std::get<Refusal>(answer).settle.empty());
}

TEST_CASE("an oven whose parts allow 65 °C at the worst place is set lower by evenness and swing") {
  // 90 °C less 10 K is what cord and board allow; the oven adds 3 + 2 K.
  const auto answer = sample::bake(sample::piece(sample::radio()));
  REQUIRE(std::holds_alternative<BakePlan>(answer));
  const BakePlan& plan = std::get<BakePlan>(answer);
  CHECK(plan.set == Temperature::celsius(75));
  CHECK(plan.weakest_part == PartId("cord"));
  CHECK(plan.bound == SetPointBound::part);
}

TEST_CASE("whole degrees are rounded down, settings and heat bound the set point") {
  const shop::Oven oven = sample::cabinet();
  const OvenExcess excess = oven_excess(oven);
  const auto set = [&](double allowed, double reach) {
    return highest_set_point(Temperature::celsius(allowed), excess, oven, Temperature::celsius(reach));
  };
  CHECK(set(65.9, 200)->set == Temperature::celsius(60));
  CHECK(set(200, 200)->set == oven.hottest_setting);
  CHECK(set(200, 200)->bound == SetPointBound::oven_setting);
  CHECK(set(200, 72.5)->set == Temperature::celsius(70));
  CHECK(set(200, 72.5)->bound == SetPointBound::heat);
  CHECK(set(54, 200)->set == Temperature::celsius(49));
  CHECK(!set(53.9, 200).has_value());
}

TEST_CASE("a lower limit never gives a higher set point") {
  rc::check([] {
    const double low = *rc::gen::inRange(300, 1500) / 10.0, more = *rc::gen::inRange(0, 300) / 10.0;
    const shop::Oven oven = sample::cabinet();
    const OvenExcess excess = oven_excess(oven);
    const auto at = [&](double allowed) {
      const auto set =
          highest_set_point(Temperature::celsius(allowed), excess, oven, Temperature::celsius(150));
      return set ? set->set : Temperature::celsius(0);
    };
    RC_ASSERT(at(low) <= at(low + more));
  });
}

TEST_CASE("no part's peak comes nearer to its limit than the margin asks") {
  rc::check([] {
    const double melts = *rc::gen::inRange(500, 1200) / 10.0;
    shop::Oven oven = *rc::gen::arbitrary<bool>() ? sample::lamp_locker() : sample::cabinet();
    oven.evenness = *rc::gen::inRange(0, 8) * kelvin;
    oven.swing = *rc::gen::inRange(0, 5) * kelvin;
    const OvenPiece piece = sample::piece(sample::with_part(sample::radio(), measured(melts)));
    const auto answer = sample::bake(piece, oven);
    if (const auto* plan = std::get_if<BakePlan>(&answer)) {
      for (std::size_t i = 0; i < plan->parts.size(); ++i) {
        RC_ASSERT(plan->parts[i].margin >= piece.parts[i].limit->margin - 1e-9 * kelvin);
      }
    }
  });
}

TEST_CASE(
    "wax may run at 71 °C and sometimes below it, so the weakest part sets the oven and not the habit") {
  // Common practice, no source: "wax may run above 71 °C and sometimes at it". Public tables have paraffin
  // melting from 46 °C.
  const auto plain = sample::bake(sample::piece(sample::radio()));
  const auto waxed = sample::bake(sample::piece(sample::with_part(sample::radio(), measured(71))));
  CHECK(std::get<BakePlan>(plain).set > Temperature::celsius(71));
  CHECK(std::get<BakePlan>(waxed).set == Temperature::celsius(56));
}

TEST_CASE("an unmeasured wax goes without heat, and the hours a hot-plate test would save are named") {
  equipment::Part coils = sample::part("coils", "wax_low", 20);
  coils.materials.push_back(MaterialId("wax_mid"));
  const OvenPiece piece = sample::piece(sample::with_part(sample::radio(), coils));
  const auto answer = sample::bake(piece);
  REQUIRE(std::holds_alternative<NoBake>(answer));
  const NoBake& refused = std::get<NoBake>(answer);
  CHECK(refused.why == NoBake::Why::needs_no_heat);
  CHECK(refused.part == PartId("coils"));
  CHECK(refused.reason.find("36 °C") != std::string::npos);
  CHECK(refused.reason.find("nobody bakes below 49 °C") != std::string::npos);

  const auto saving = saved_by_measuring(piece, sample::cabinet(), sample::wall(), sample::shop_air());
  REQUIRE(saving.has_value());
  REQUIRE(saving->measure.size() == 1);
  CHECK(saving->measure.front().shown == Temperature::celsius(75));
  CHECK(saving->measure.front().needed.celsius() == doctest::Approx(48.9 + 5 + 10).epsilon(1e-3));
  CHECK(saving->set == Temperature::celsius(60));
  CHECK(saving->saved() > Duration{});
}

TEST_CASE("where measuring could not help, no saving is promised") {
  const OvenPiece piece = sample::piece(sample::with_part(sample::radio(), measured(50)));
  CHECK(std::get<NoBake>(sample::bake(piece)).why == NoBake::Why::needs_no_heat);
  CHECK(!saved_by_measuring(piece, sample::cabinet(), sample::wall(), sample::shop_air()).has_value());
}

TEST_CASE("a part nobody can name keeps its unit out of the oven, with the way to settle it") {
  const OvenPiece piece = sample::piece(sample::with_part(sample::radio(), sample::part("lump", "", 20)));
  const auto answer = sample::bake(piece);
  REQUIRE(std::holds_alternative<NoBake>(answer));
  CHECK(std::get<NoBake>(answer).why == NoBake::Why::refused);
  CHECK(std::get<NoBake>(answer).part == PartId("lump"));
  CHECK(!std::get<NoBake>(answer).settle.empty());
  CHECK(std::holds_alternative<BakePlan>(sample::bake(
      sample::piece(sample::with_part(sample::radio(), sample::part("lump", "", 20)), {PartId("lump")}))));
}

TEST_CASE("an oven that cannot do it says which of its settings, its heat or its lamps is in the way") {
  const OvenPiece piece = sample::piece(sample::radio());
  const auto reason = [&](const shop::Oven& oven) {
    const auto answer = sample::bake(piece, oven);
    REQUIRE(std::holds_alternative<NoBake>(answer));
    CHECK(std::get<NoBake>(answer).why == NoBake::Why::oven);
    return std::get<NoBake>(answer).reason;
  };
  shop::Oven oven = sample::cabinet();
  oven.hottest_setting = Temperature::celsius(45);
  CHECK(reason(oven).find("hottest setting") != std::string::npos);
  oven = sample::cabinet();
  oven.heater = 100 * watt;
  CHECK(reason(oven).find("heat ends at") != std::string::npos);
  oven = sample::cabinet();
  oven.coldest_setting = Temperature::celsius(85);
  CHECK(reason(oven).find("coldest setting") != std::string::npos);
  oven = sample::lamp_locker();
  oven.lamps->distance = {};
  CHECK(reason(oven).find("distance") != std::string::npos);
}

TEST_CASE("masking tape that goes along into the oven bounds it like any part") {
  OvenPiece piece = sample::piece(sample::radio());
  PartLimit tape;
  tape.part = PartId("masking_tape");
  tape.limit = Temperature::celsius(66);
  tape.margin = 5 * kelvin;
  send_along(piece, "masking tape", tape);
  const auto answer = sample::bake(piece);
  CHECK(std::get<BakePlan>(answer).set == Temperature::celsius(56));
  CHECK(std::get<BakePlan>(answer).weakest_part == PartId("masking_tape"));
}
