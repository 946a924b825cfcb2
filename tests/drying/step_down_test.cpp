#include "core/drying/step_down.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "core/drying/load_run.h"
#include "core/moist_air/saturation.h"
#include "sample.h"

using namespace dampward;
using namespace dampward::drying;
using doctest::Approx;

namespace {

constexpr double limit_c = 38;

// A box that is nothing but a steel case, so that one time constant tells how it cools.
equipment::Kind plain_box() {
  equipment::Kind kind = sample::radio();
  kind.parts = {sample::part("case", "steel", 6000), sample::part("wax", "wax_mid", 10)};
  kind.heavy_lump.clear();
  return kind;
}

struct Case {
  OvenPiece piece;
  shop::Oven oven = sample::cabinet();
  drying::Wall wall = sample::wall();
  moist_air::HumidAir room = sample::shop_air(30, 80);

  explicit Case(const equipment::Kind& kind) : piece(sample::piece(kind)) {}
  StepDownAnswer answer(double hottest = limit_c) const {
    const LoadUnits one{&piece, 1};
    const BakePlan bake = std::get<BakePlan>(bake_load(oven, wall, std::span(&one, 1), room));
    return step_down(oven, wall, std::span(&one, 1), bake, room, Temperature::celsius(hottest));
  }
};

StepDown down(const StepDownAnswer& answer) {
  REQUIRE(std::holds_alternative<StepDown>(answer));
  return std::get<StepDown>(answer);
}
std::string reason(const StepDownAnswer& answer) {
  REQUIRE(std::holds_alternative<NoStepDown>(answer));
  return std::get<NoStepDown>(answer).reason;
}

}  // namespace

TEST_CASE("the hottest place of the stepped-down oven is as hot as the lacquer allows") {
  const Case shop(sample::radio());
  const StepDown held = down(shop.answer());
  const double uneven =
      3.0 / (std::get<BakePlan>(sample::bake(shop.piece, shop.oven, shop.room)).set.celsius() - 30);
  const double over = held.set.celsius() - 30;
  CHECK(30 + over * (1 + uneven) + 2 == Approx(limit_c));
  CHECK(held.coldest.celsius() == Approx(held.set.celsius() - uneven * over - 2));
  CHECK(held.humidity.fraction() == Approx(0.80 * (moist_air::saturation_pressure(Temperature::celsius(30)) /
                                                   moist_air::saturation_pressure(held.coldest)))
                                        .epsilon(1e-3));
}

// A slow twin: air, lining and box by explicit steps of a second, from the same conductances.
TEST_CASE("the load comes down as a plain step-by-step reckoning of the same oven does") {
  const Case shop(plain_box());
  const StepDown held = down(shop.answer());
  const LoadUnits one{&shop.piece, 1};
  const BakePlan bake = std::get<BakePlan>(bake_load(shop.oven, shop.wall, std::span(&one, 1), shop.room));
  const OvenNodes nodes =
      oven_nodes(shop.oven, shop.wall, Loss::lowest, moist_air::brought_to(shop.room, held.set));
  const double capacity = shop.piece.capacity.high.si();
  const double to_box = capacity / shop.piece.time_constant(AirMotion::moving).high.si();
  const double spread = (held.set - held.coldest).si(), thermostat = held.set.celsius() + spread;
  double air = (bake.set + bake.excess.sum()).celsius(), lining = air, box = air, seconds = 0;
  while (box > limit_c + 0.1) {
    const double power = air < thermostat - 0.5 ? nodes.available.si() : 0;
    // The air holds next to nothing: it is where its heat flows cancel out.
    air = (nodes.vented.si() * 30 + nodes.inside.si() * lining + to_box * box + power) /
          (nodes.vented.si() + nodes.inside.si() + to_box);
    air = power > 0 ? std::min(air, thermostat - 0.5) : std::max(air, thermostat - 0.5);
    lining += (nodes.inside.si() * (air - lining) - nodes.outside.si() * (lining - 30)) / nodes.lining.si();
    box += to_box * (air - box) / capacity;
    ++seconds;
    REQUIRE(seconds < 1e5);
  }
  CHECK(held.takes.in(minute) == Approx(seconds / 60).epsilon(0.03));
}

TEST_CASE("a better insulated oven and a lower limit both take longer to come down") {
  Case shop(sample::radio());
  const Duration usual = down(shop.answer()).takes;
  CHECK(down(shop.answer(39)).takes < usual);
  shop.wall.loss = sample::figure(HeatTransferCoefficient::si(0.3), HeatTransferCoefficient::si(0.5),
                                  HeatTransferCoefficient::si(0.7));
  CHECK(down(shop.answer()).takes > usual);
}

TEST_CASE("an oven that cannot be held so low says why") {
  Case shop(sample::radio());
  shop.oven.coldest_setting = Temperature::celsius(45);
  CHECK(reason(shop.answer()).find("45") != std::string::npos);
  shop.oven.coldest_setting = Temperature::celsius(30);
  shop.room = sample::shop_air(37, 60);
  CHECK(reason(shop.answer()).find("37") != std::string::npos);
  shop.oven = sample::lamp_locker();
  shop.room = sample::shop_air();
  CHECK(reason(shop.answer()).find("lamps") != std::string::npos);
}
