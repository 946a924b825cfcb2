#include "workbench/leaflet.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <algorithm>

#include "adapters/files/shop_folder.h"
#include "tests/workbench/demo_shop.h"
#include "workbench/detail/home_heat.h"

namespace dampward::workbench::test {
namespace {

using doctest::Approx;

const Workshop& shipped() {
  static const Workshop workshop = files::shipped_workshop();
  return workshop;
}

LeafletQuestion asked(const char* kind, HomeHeat heat) {
  LeafletQuestion question;
  question.kind = KindId(kind);
  question.heat = heat;
  question.lacquer = LacquerId("phenolic_tung_varnish_fungicidal");
  return question;
}

Leaflet page_of(const LeafletQuestion& question) {
  return leaflet(shipped(), question).value();
}

HomeBox steel_box() {
  drying::Wall wall = *shipped().walls.find("bare_steel");
  wall.loss.value = Range<HeatTransferCoefficient>(HeatTransferCoefficient::si(5));
  return {{metre, metre, metre}, wall};
}

}  // namespace

// By hand: six sides of a metre at 5 W/(m2 K) are 30 W/K, and half a cubic metre of air an hour carries 0.5 x 1.2 x 1007/3600 =
// 0.168 W/K; 60 W over 30.168 W/K are 1.99 K.
TEST_CASE("a box comes to rest where its walls and its leak lose what the lamp gives") {
  CHECK(loss_of(steel_box(), HeatTransferCoefficient::si(5)).si() == Approx(30.168).epsilon(1e-3));
  const Temperature air = Temperature::celsius(30);
  const HomeWarmth warmth = warmth_of(steel_box(), 60 * watt, 60 * watt, 60 * watt, air);
  CHECK((warmth.usual - air).si() == Approx(1.989).epsilon(1e-3));
  CHECK((warmth.hottest - air).si() == Approx(4 + 1.25 * 1.989).epsilon(1e-3));
  CHECK((warmth.coolest - air).si() == Approx(-4 + 0.75 * 1.989).epsilon(1e-3));
}

TEST_CASE("the strongest heat brings the hottest place to what is allowed and no further") {
  CHECK(rc::check([] {
    const Temperature air = Temperature::celsius(*rc::gen::inRange(10, 40));
    const Temperature allowed = Temperature::celsius(*rc::gen::inRange(36, 90));
    const auto strongest = strongest_heat(steel_box(), allowed, air);
    RC_PRE(strongest.has_value());
    const HomeWarmth warmth = warmth_of(steel_box(), *strongest, *strongest, *strongest, air);
    RC_ASSERT(std::abs((warmth.hottest - allowed).si()) < 1e-6);
    const HomeWarmth stronger = warmth_of(steel_box(), *strongest, *strongest, 1.1 * *strongest, air);
    RC_ASSERT(stronger.hottest >= warmth.hottest);
  }));
  CHECK_FALSE(strongest_heat(steel_box(), Temperature::celsius(36), Temperature::celsius(33)).has_value());
}

TEST_CASE("no page ever lets the set become hotter than its weakest part stands") {
  for (const std::string& kind : shipped().kinds.ids()) {
    for (const HomeHeat heat : {HomeHeat::lamp_box, HomeHeat::sun_box, HomeHeat::dry_box}) {
      const Leaflet page = page_of(asked(kind.c_str(), heat));
      CHECK_FALSE(page.cautions.empty());
      if (page.refused) {
        CHECK_FALSE(page.refused->settle.empty());
        continue;
      }
      CHECK(page.drying.heat <= page.drying.strongest + 1e-6 * watt);
      CHECK(page.drying.reading_high <= page.drying.never_above);
      CHECK(page.drying.usual <= page.drying.safe);
      CHECK(page.coat.needed.high < page.spray.lacquer_sprayed);
      CHECK(page.spray.share_of_limit > 0.10);
    }
  }
}

TEST_CASE("a lamp that could overheat the set is refused with the strongest that cannot") {
  LeafletQuestion question = asked("receiver_base", HomeHeat::lamp_box);
  question.lamp = 60 * watt;
  const Leaflet page = page_of(question);
  REQUIRE(page.refused.has_value());
  CHECK(page.refused->reason.find("60 W") != std::string::npos);
  CHECK(page.refused->settle.find("W or less") != std::string::npos);
  question.lamp = 10 * watt;
  CHECK_FALSE(page_of(question).refused.has_value());
}

TEST_CASE("a warmer box never takes longer, and damper days never less time to dry") {
  LeafletQuestion question = asked("board_unit_modern", HomeHeat::dry_box);
  const Leaflet cold = page_of(question);
  question.heat = HomeHeat::lamp_box;
  const Leaflet warm = page_of(question);
  CHECK(warm.drying.safe <= cold.drying.safe);
  question.humidity = RelativeHumidity::percent(60);
  CHECK(page_of(question).drying.safe <= warm.drying.safe);
}

TEST_CASE("a home refuses isocyanates, unknown solvents of the air's own making, and a box too small") {
  LeafletQuestion question = asked("receiver_base", HomeHeat::dry_box);
  question.lacquer = LacquerId("polyurethane_one_part");
  CHECK(page_of(question).refused->rule == Rule::isocyanate);
  question = asked("receiver_base", HomeHeat::dry_box);
  question.box = BoxSize{300 * millimetre, 300 * millimetre, 300 * millimetre};
  CHECK(page_of(question).refused->settle.find("A box of") != std::string::npos);
  question = asked("receiver_base", HomeHeat::dry_box);
  question.humidity = RelativeHumidity::percent(95);
  CHECK(page_of(question).refused->rule == Rule::warm_window);
}

TEST_CASE("a kind or lacquer nobody knows is a fault that names those there are") {
  const auto page = leaflet(shipped(), asked("reciever_base", HomeHeat::dry_box));
  REQUIRE_FALSE(page.ok());
  CHECK(page.problems().front().expected.find("receiver_base") != std::string::npos);
}

}  // namespace dampward::workbench::test
