#include "core/route/coating_way.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include "bench.h"

namespace dampward::route::test {
namespace {

using equipment::CoatingWay;

// A board of many jacks: 90 points to mask, and a brush reaches nearly half of it while it is assembled.
equipment::Kind jack_board() {
  Bench bench;
  equipment::Kind kind = bench.kind;
  kind.contacts.value = Range<double>(40, 90, 220);
  kind.spray_area_stripped.value = Range<Area>(1.95 * square_metre);
  kind.spray_area_assembled.value = Range<Area>(0.87 * square_metre);
  kind.usual_way = CoatingWay::brush_assembled;
  kind.way_reason.clear();
  using equipment::Operation;
  const auto set = [&](Operation o, double a, double b, double c) {
    kind.labour[o] = {{a * minute, b * minute, c * minute}, 1, Mark::estimate, ""};
  };
  set(Operation::strip, 15, 30, 60);
  set(Operation::mask, 9, 32, 164);
  set(Operation::coat, 36, 60, 120);
  set(Operation::unmask, 6, 12, 26);
  set(Operation::reassemble, 21, 35, 70);
  return kind;
}

}  // namespace

TEST_CASE("boards of many jacks are brushed assembled (common practice, no source, the labour agrees)") {
  const WayChoice choice = choose_way(jack_board(), {});
  CHECK(choice.way == CoatingWay::brush_assembled);
  CHECK(choice.spray.total().typical > choice.brush.total().typical);
  CHECK(choice.spray.estimated);
  CHECK(!choice.brush.estimated);
}

TEST_CASE("a set with few points, open once stripped, is sprayed, and the reason shows both times") {
  const WayChoice choice = choose_way(Bench().kind, {});
  CHECK(choice.way == CoatingWay::spray_stripped);
  CHECK(choice.reason.find("The works are open on all sides once out") != std::string::npos);
  CHECK(choice.reason.find("to brush it assembled") != std::string::npos);
  CHECK(choice.reason.find("22 %") != std::string::npos);
}

TEST_CASE("a usual spray gives way to the brush only where the brush reaches enough and saves much") {
  equipment::Kind kind = Bench().kind;
  kind.contacts.value = Range<double>(55, 55, 55);
  CHECK(choose_way(kind, {}).reason.find("leaves most of it bare") != std::string::npos);
  kind.spray_area_assembled.value = Range<Area>(0.5 * square_metre);
  const WayChoice choice = choose_way(kind, {});
  const double factor = choice.spray.total().typical / choice.brush.total().typical;
  CHECK((choice.way == CoatingWay::brush_assembled) == (factor > usual_way_patience));
}

TEST_CASE("a reason to brush is not overruled by labour") {
  equipment::Kind kind = jack_board();
  kind.way_reason = "one drop in the gap stops it";
  kind.labour[equipment::Operation::coat].hands_on = 2000 * minute;
  const WayChoice choice = choose_way(kind, {});
  CHECK(choice.way == CoatingWay::brush_assembled);
  CHECK(choice.reason.find("spraying is quicker") != std::string::npos);
  kind.way_reason.clear();
  CHECK(choose_way(kind, {}).way == CoatingWay::spray_stripped);
}

TEST_CASE("a shop without a gun brushes, one without a brush hand sprays, and one with neither is told") {
  CHECK(choose_way(Bench().kind, {false, true}).way == CoatingWay::brush_assembled);
  CHECK(choose_way(jack_board(), {true, false}).way == CoatingWay::spray_stripped);
  CHECK(!choose_way(Bench().kind, {false, false}).possible);
  Bench bench;
  bench.shop.crew.front().skills = {"test"};
  const Route route = bench.route();
  REQUIRE(route.refused);
  CHECK(route.refused->settle.find("\"spray\"") != std::string::npos);
}

TEST_CASE("more points to mask never make spraying look better") {
  CHECK(rc::check([](unsigned low, unsigned more) {
    equipment::Kind kind = jack_board();
    kind.contacts.value = Range<double>(low % 300);
    const Duration few = choose_way(kind, {}).spray.total().typical;
    kind.contacts.value = Range<double>(low % 300 + more % 300);
    RC_ASSERT(choose_way(kind, {}).spray.total().typical >= few);
  }));
}

}  // namespace dampward::route::test
