#include "workbench/bake_answer.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <cmath>

#include "tests/workbench/demo_shop.h"
#include "workbench/simple_body.h"

namespace dampward::workbench::test {
namespace {

using doctest::Approx;

constexpr AskedAir damp{Temperature::celsius(32), RelativeHumidity::percent(85)};

shop::Oven small_oven() {
  shop::Oven oven;
  oven.id = OvenId("oven");
  oven.name = "oven";
  oven.inside_length = oven.inside_width = oven.inside_height = 1 * metre;
  oven.wall = "insulated_50mm";
  oven.heater = oven.supply = 3 * kilowatt;
  oven.air_moves = true;
  oven.coldest_setting = Temperature::celsius(35);
  oven.hottest_setting = Temperature::celsius(120);
  oven.swing = 2 * kelvin;
  oven.evenness = 3 * kelvin;
  oven.vent = 0.3 * cubic_metre_per_minute;
  oven.control_amid_load = true;
  return oven;
}

SimpleBody webbing() {
  SimpleBody body;
  body.mass = 2 * kilogram;
  body.box = {0.3 * metre, 0.2 * metre, 0.1 * metre};
  body.part = MaterialId("cotton_webbing");
  body.part_mass = 0.2 * kilogram;
  body.thickness = Range(2 * millimetre);
  return body;
}

OvenBake baked(const SimpleBody& body, const shop::Oven& oven, const AskedAir& air = damp) {
  Workshop workshop = files::shipped_workshop();
  workshop.shop.ovens = {oven};
  const equipment::Kind kind = simple_kind(body, workshop.materials);
  workshop.kinds.put(kind);
  BakeQuestion question;
  question.kind = kind.id;
  question.air = air;
  const BakeAnswer answer = bake_answer(workshop, nullptr, question).value();
  REQUIRE(answer.ovens.size() == 1);
  return answer.ovens.front();
}

const PartInOven& part_of(const OvenBake& bake) {
  return bake.parts.back();
}

}  // namespace

TEST_CASE("a load of the demo's plan bakes as the plan says, to the minute and the degree") {
  const HandedRecords records = demo_records();
  const Plan plan = plan_of(demo_workshop(), records);
  REQUIRE_FALSE(plan.loads.empty());
  for (const Load& load : plan.loads) {
    BakeQuestion question;
    question.units = load.units;
    question.oven = load.oven;
    const BakeAnswer answer = bake_answer(demo_workshop(), &records, question).value();
    INFO(load.id);
    REQUIRE(answer.ovens.size() == 1);
    const OvenBake& bake = answer.ovens.front();
    CHECK(bake.bakes);
    CHECK(bake.in_time());
    CHECK(bake.set_point == load.set_point);
    CHECK(bake.warm_up.si() == Approx(load.warm_up.si()));
    CHECK(bake.hold.si() == Approx(load.hold.si()));
    CHECK(bake.hold_nominal.si() == Approx(load.hold_nominal.si()));
    CHECK(bake.rule == load.rule);
    for (const PartInOven& part : bake.parts) {
      const auto same = std::find_if(load.parts.begin(), load.parts.end(), [&](const PartInOven& p) {
        return p.unit == part.unit && p.part == part.part;
      });
      INFO(part.name);
      REQUIRE(same != load.parts.end());
      CHECK(same->peak == part.peak);
      CHECK(same->dry == part.dry);
      CHECK(same->residual.value_or(-1) == Approx(part.residual.value_or(-1)));
    }
  }
}

TEST_CASE("the setting is the limit less margin, swing and evenness, in whole degrees") {
  SimpleBody body = webbing();
  body.limit = Temperature::celsius(75);
  body.margin = 5 * kelvin;
  const OvenBake bake = baked(body, small_oven());
  CHECK(bake.set_point.celsius() == Approx(75 - 5 - 2 - 3));
  CHECK(part_of(bake).peak.celsius() == Approx(70));
  body.margin.reset();  // as under any doubtful figure
  CHECK(baked(body, small_oven()).set_point.celsius() == Approx(75 - 15 - 5));
}

TEST_CASE("the heat a body takes is at least what warms it and boils off its water") {
  // Q = m c ΔT of 1.8 kg of steel at 0.46 kJ/(kg K) (handbook memory) and L = 2.4 MJ/kg of water near 40 °C (steam tables, from
  // memory); walls, air and webbing come on top.
  const OvenBake bake = baked(webbing(), small_oven());
  const double kilojoules = 1.8 * 0.46 * (bake.set_point.celsius() - 32);
  CHECK(bake.energy.si() / 1e3 > kilojoules);
}

TEST_CASE(
    "thin webbing is dry to a tenth between a plate's time in a warm oven and that time after warming up") {
  // Crank, The Mathematics of Diffusion, 1975: a plate open on both faces has lost nine tenths at D t/l² = 0.848, l half its thickness.
  // Warming up counts for something and never for more than its own length, so the plate's time at the setting lies between the
  // hold and warm-up with hold. With typical figures, up to the tenth more that the oven's own damp air may cost.
  const Workshop tables = files::shipped_workshop();
  const materials::Material& cotton = *tables.materials.find(MaterialId("cotton_webbing"));
  REQUIRE(cotton.diffusion.has_value());
  SimpleBody body = webbing();
  body.thickness = Range(4 * millimetre);
  const OvenBake bake = baked(body, small_oven());
  const double set = bake.set_point.kelvins();
  const double arrhenius = std::exp(-cotton.diffusion->activation_energy.value.typical.si() / 8.314462618 *
                                    (1 / set - 1 / cotton.diffusion->at.kelvins()));
  const double d = cotton.diffusion->diffusivity.value.typical.si() * arrhenius;
  const double plate = 0.848 * 2e-3 * 2e-3 / d;
  CHECK(bake.hold_nominal.si() < 1.1 * plate);
  CHECK((bake.warm_up + bake.hold_nominal).si() > plate);
}

TEST_CASE("a heavier body is never quicker, a thicker part never sooner dry, and no part passes its limit") {
  CHECK(rc::check([] {
    SimpleBody body = webbing();
    body.mass = (2.0 + *rc::gen::inRange(0, 20)) * kilogram;
    body.thickness = Range((1 + 0.25 * *rc::gen::inRange(0, 12)) * millimetre);
    const OvenBake bake = baked(body, small_oven());
    SimpleBody heavier = body, thicker = body;
    heavier.mass = 1.3 * body.mass;
    thicker.thickness = Range(1.3 * body.thickness.typical);
    RC_ASSERT(baked(heavier, small_oven()).warm_up >= bake.warm_up);
    // Where nothing is waited for, a thicker part gives off less water while all warms up: seconds.
    RC_ASSERT(baked(thicker, small_oven()).in_oven() + 1 * minute > bake.in_oven());
    for (const PartInOven& part : bake.parts) RC_ASSERT(part.peak < part.limit);
  }));
}

TEST_CASE("a part too weak for any oven is not baked, and the answer says what would help") {
  SimpleBody body = webbing();
  body.limit = Temperature::celsius(55);
  const OvenBake bake = baked(body, small_oven());
  CHECK_FALSE(bake.bakes);
  CHECK_FALSE(bake.reason.empty());
  CHECK_FALSE(bake.settle.empty());
}

}  // namespace dampward::workbench::test
