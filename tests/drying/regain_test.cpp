#include "core/drying/regain.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include "core/moist_air/saturation.h"
#include "sample.h"

using namespace dampward;
using namespace dampward::drying;
using doctest::Approx;

namespace {

const OvenPart& part_of(const OvenPiece& piece, const char* id) {
  for (const OvenPart& part : piece.parts) {
    if (part.id == PartId(id)) return part;
  }
  FAIL("no such part");
  return piece.parts.front();
}

AfterBake steady(double celsius, double percent, Duration until = 48 * hour) {
  const Temperature t = Temperature::celsius(celsius);
  return {[t](Duration) { return t; }, 0.01 * percent * moist_air::saturation_pressure(t), until};
}

Sorption paper(double start, double floor) {
  return {MoistureContent::fraction(start), MoistureContent::fraction(floor),
          MoistureContent::fraction(floor)};
}

}  // namespace

// [Crank1975] eq. 10.8, the half-time of a sheet open on both faces: t50 = 0.049 h²/D.
TEST_CASE("a laminate has half its water back after 0.049 thickness squared over diffusivity") {
  const OvenPiece piece = sample::piece(sample::radio());
  const DryingBody& board = *part_of(piece, "board").body;
  const Diffusivity d = effective_diffusivity(board, Temperature::celsius(30), Side::quick);
  const Length h = 1.6 * millimetre;
  const Duration half = 0.0492 * (h * h / d);
  CHECK(regain(board, {}, steady(30, 80, 3 * half)).at(half) == Approx(0.5).epsilon(0.01));
}

// [Crank1975] eq. 4.20, short times: share = (4/h) √(D t/π).
TEST_CASE("at first the share that is back grows with the root of time") {
  const OvenPiece piece = sample::piece(sample::radio());
  const DryingBody& board = *part_of(piece, "board").body;
  const Diffusivity d = effective_diffusivity(board, Temperature::celsius(30), Side::quick);
  const double h = 1.6e-3;
  const Regain course = regain(board, {}, steady(30, 80));
  for (const double hours : {0.5, 1.0, 2.0}) {
    const double expected = 4 / h * std::sqrt(d.si() * hours * 3600 / 3.14159265);
    CHECK(course.at(hours * hour) == Approx(expected).epsilon(0.02));
  }
  const auto tenth = course.passes(0.1);
  REQUIRE(tenth.has_value());
  CHECK(course.at(*tenth) == Approx(0.1).epsilon(1e-6));
}

TEST_CASE("the quick end of a diffusivity is above the typical figure as the slow end is below it") {
  const OvenPiece piece = sample::piece(sample::radio());
  for (const char* id : {"cord", "board"}) {
    const DryingBody& body = *part_of(piece, id).body;
    const Temperature at = Temperature::celsius(32);
    const auto d = [&](Side side) { return effective_diffusivity(body, at, side); };
    CHECK(d(Side::safe) < d(Side::typical));
    CHECK(d(Side::typical) < d(Side::quick));
  }
}

// The air of 32 °C and 85 % holds as much vapour as air of 38 °C and 61 %: a load that waits there is wetted again.
TEST_CASE("a load held at 38 °C in the vapour of a damp room takes damp back") {
  const Temperature held = Temperature::celsius(38);
  const Pressure vapour = 0.85 * moist_air::saturation_pressure(Temperature::celsius(32));
  CHECK(vapour / moist_air::saturation_pressure(held) == Approx(0.61).epsilon(0.01));
  const OvenPiece piece = sample::piece(sample::radio());
  const Sorption dried = paper(0.12, 0.02);
  const Regain course =
      regain(*part_of(piece, "cord").body, dried, {[&](Duration) { return held; }, vapour, 24 * hour});
  CHECK(course.at(24 * hour) > 0.2);
  CHECK(course.at(24 * hour) < 1);
}

TEST_CASE("damper air never gives less back, nor a later hour less than an earlier one") {
  const OvenPiece piece = sample::piece(sample::radio());
  const DryingBody& cord = *part_of(piece, "cord").body;
  CHECK(rc::check([&] {
    const double drier = 0.1 * *rc::gen::inRange(200, 900), damper = drier + 0.1 * *rc::gen::inRange(0, 90);
    const Regain less = regain(cord, paper(0.14, 0.02), steady(30, drier));
    const Regain more = regain(cord, paper(0.14, 0.02), steady(30, damper));
    double before = 0;
    for (int minutes = 1; minutes < 2000; minutes *= 2) {
      const double here = less.at(minutes * minute);
      RC_ASSERT(here <= more.at(minutes * minute) + 1e-9);
      RC_ASSERT(here >= before);
      before = here;
    }
  }));
}

TEST_CASE("a course counted from later goes on where it was") {
  const Regain course({{Duration{}, 0}, {10 * minute, 0.2}, {30 * minute, 0.4}});
  const Regain later = course.counted_from(20 * minute);
  CHECK(later.at(Duration{}) == Approx(0.3));
  CHECK(later.at(10 * minute) == Approx(0.4));
  CHECK(later.passes(0.2) == Duration{});
  CHECK(course.passes(0.3)->in(minute) == Approx(20));
  CHECK(!course.passes(0.5));
}
