#include "core/coating/flow_cup.h"

#include <doctest/doctest.h>

#include <cmath>

using namespace dampward;
using namespace dampward::coating;
using doctest::Approx;

namespace {

double cst(const char* cup, double seconds) {
  return viscosity(*find_cup(cup), seconds * second).value().in(centistokes);
}
double drains(const char* cup, double viscosity) {
  return drain_time(*find_cup(cup), viscosity * centistokes).value().in(second);
}

}  // namespace

// A cup maker's oil table (read): drain seconds for oils of known viscosity. Tolerance 0.6 s: the table is rounded to whole seconds
// and its own formulas are fits.
TEST_CASE("published oils drain from published cups in the published seconds") {
  const struct {
    const char* cup;
    double cst, seconds;
  } oils[] = {{"zahn_1", 17, 45},  {"ford_1", 17, 70},  {"zahn_1", 34, 60},  {"zahn_2", 66, 33},
              {"zahn_2", 120, 48}, {"ford_3", 120, 58}, {"ford_4", 120, 36}, {"ford_4", 230, 64},
              {"zahn_4", 850, 62}, {"zahn_5", 850, 37}, {"zahn_5", 1600, 70}};
  for (const auto& oil : oils) {
    CAPTURE(oil.cup);
    CAPTURE(oil.cst);
    CHECK(std::abs(drains(oil.cup, oil.cst) - oil.seconds) <= 0.6);
  }
}

// Regression values of formulas from memory (DIN 53211, ISO 2431): they prove the arithmetic, not the cups.
TEST_CASE("cups whose fall is slowed at short times follow a t less c over t") {
  CHECK(cst("din_4", 25) == Approx(4.57 * 25 - 452.0 / 25));
  CHECK(cst("din_4", 30) == Approx(122.03).epsilon(1e-4));
  CHECK(cst("din_4", 50) == Approx(219.46).epsilon(1e-4));
  CHECK(cst("iso_4", 40) == Approx(49.80).epsilon(1e-4));
  CHECK(cst("iso_4", 60) == Approx(78.87).epsilon(1e-4));
  CHECK(cst("iso_4", 100) == Approx(135.00).epsilon(1e-4));
  CHECK(cst("iso_6", 40) == Approx(261.75).epsilon(1e-4));
  CHECK(cst("iso_3", 50) == Approx(18.15).epsilon(1e-4));
}

TEST_CASE("one liquid drains from every cup in a time of its own") {
  CHECK(drains("ford_4", 60) == Approx(20.1).epsilon(5e-3));
  CHECK(drains("zahn_2", 60) == Approx(31.1).epsilon(5e-3));
  CHECK(drains("iso_4", 60) == Approx(46.9).epsilon(5e-3));
  CHECK(!drain_time(*find_cup("din_4"), 60 * centistokes).ok());
}

// A manual's pair, 8 to 29 s Ford 4 equal to 17 to 23 s Zahn 2 (TO 1-1-8, read), fails the cups' own formulas: not used.
TEST_CASE("29 s in Ford 4 is three times as thick as 23 s in Zahn 2") {
  CHECK(cst("zahn_2", 23) == Approx(31.5));
  CHECK(cst("ford_4", 29) == Approx(94.4).epsilon(1e-3));
}

TEST_CASE("every cup turns its own seconds into a viscosity and back") {
  for (const FlowCup& cup : flow_cups()) {
    CAPTURE(cup.name);
    for (double share : {0.0, 0.4, 1.0}) {
      const Duration drain = cup.shortest + share * (cup.longest - cup.shortest);
      const auto nu = viscosity(cup, drain);
      REQUIRE(nu.ok());
      // At the very ends of the range rounding may fall outside; the middle never does.
      const auto again = drain_time(cup, *nu);
      if (share > 0 && share < 1) REQUIRE(again.ok());
      if (!again.ok()) continue;
      CHECK(again->in(second) == Approx(drain.in(second)).epsilon(1e-9));
      CHECK(*nu > KinematicViscosity{});
    }
  }
}

TEST_CASE("outside its drain times a cup tells nothing, and says which way to go") {
  const auto thin = viscosity(*find_cup("ford_4"), 12.7 * second);
  REQUIRE(!thin.ok());
  CHECK(thin.problems()[0].next == "Take a cup with a smaller hole.");
  const auto thick = viscosity(*find_cup("zahn_2"), 120 * second);
  REQUIRE(!thick.ok());
  CHECK(thick.problems()[0].next == "Take a cup with a larger hole.");
  CHECK(!viscosity(*find_cup("zahn_2"), Duration::si(std::nan(""))).ok());
  CHECK(find_cup("bucket") == nullptr);
}
