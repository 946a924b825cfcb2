#include "core/room_air/room.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <cmath>

#include "core/room_air/vapour.h"

using namespace dampward;
using namespace dampward::room_air;
using doctest::Approx;

namespace {

// 20 mL of toluene a minute in a room of 40 m³ with 8 m³ of fresh air a minute.
constexpr VolumeFlow toluene = VolumeFlow::si(0.0045988 / 60);
Room shed(double mixing) {
  return {40 * cubic_metre, 8 * cubic_metre_per_minute, mixing};
}
double after(double mixing, double minutes) {
  return concentration(shed(mixing), toluene, VapourShare{}, minutes * minute).ppm();
}

shop::SprayPlace place() {
  shop::SprayPlace p;
  p.kind = shop::PlaceKind::room;
  p.length = 5 * metre;
  p.width = 4 * metre;
  p.height = 2 * metre;
  p.fan = 8 * cubic_metre_per_minute;
  p.opening_to_outside = true;
  return p;
}

}  // namespace

// Computed from the dilution equation; the source is liquid toluene of 868.5 kg/m³ at 25 °C.
TEST_CASE("twenty millilitres of toluene a minute is 0.0046 cubic metres of vapour a minute") {
  const Volume vapour =
      vapour_volume(20 * millilitre, 868.5 * kilogram_per_cubic_metre, 92.138 * gram_per_mole);
  CHECK(vapour / cubic_metre == Approx(0.0046).epsilon(0.01));
}

TEST_CASE(
    "the worked room reaches 363 ppm after five minutes well mixed, and three times as much in the end badly "
    "mixed") {
  CHECK(after(1, 5) == Approx(363.4).epsilon(1e-3));
  CHECK(after(1, 10) == Approx(497.1).epsilon(1e-3));
  CHECK(after(1, 15) == Approx(546.2).epsilon(1e-3));
  CHECK(after(1, 30) == Approx(573.4).epsilon(1e-3));
  CHECK(steady_concentration(shed(1), toluene)->ppm() == Approx(574.85).epsilon(1e-4));
  CHECK(after(0.3, 5) == Approx(496.6).epsilon(1e-3));
  CHECK(after(0.3, 10) == Approx(864.6).epsilon(1e-3));
  CHECK(after(0.3, 15) == Approx(1137.1).epsilon(1e-3));
  CHECK(after(0.3, 30) == Approx(1599.4).epsilon(1e-3));
  CHECK(steady_concentration(shed(0.3), toluene)->ppm() == Approx(1916.2).epsilon(1e-4));
}

TEST_CASE("purging from 2000 to 50 ppm takes 3.7 air changes divided by the mixing factor") {
  const auto well = purge_time(shed(1), VapourShare::ppm(2000), VapourShare::ppm(50));
  const auto badly = purge_time(shed(0.3), VapourShare::ppm(2000), VapourShare::ppm(50));
  CHECK(well->in(minute) == Approx(18.44).epsilon(1e-3));
  CHECK(badly->in(minute) == Approx(61.48).epsilon(1e-3));
  CHECK(*well * shed(1).fresh_air / shed(1).volume == Approx(3.689).epsilon(1e-3));
  const Room cubic_feet{1000 * cubic_foot, 100 * cubic_foot_per_minute, 1};
  CHECK(purge_time(cubic_feet, VapourShare::percent(100), VapourShare::percent(1))->in(minute) ==
        Approx(46.05).epsilon(1e-3));
  CHECK(*purge_time(shed(1), VapourShare::ppm(40), VapourShare::ppm(50)) == Duration{});
}

TEST_CASE("without fresh air vapour only rises, no steady share is reached and no purge ends") {
  const Room closed{40 * cubic_metre, {}, 0.3};
  CHECK(!steady_concentration(closed, toluene));
  CHECK(!purge_time(closed, VapourShare::ppm(2000), VapourShare::ppm(50)));
  CHECK(concentration(closed, toluene, VapourShare{}, 10 * minute).ppm() == Approx(1149.7).epsilon(1e-3));
  CHECK(still_air(closed, 10 * minute * toluene).ppm() == Approx(1149.7 / 0.3).epsilon(1e-3));
}

// Univ. of Toledo page of ACGIH formulas (read): Q' = 403e6 SG ER / (MW C), Q = K Q'. Toluene of 0.866, a pint an hour, K = 4, 50 ppm
// gives 5050.8 cfm; 403 cubic feet per pint are printed rounded: 0.5 %.
TEST_CASE("a pint of toluene an hour needs five thousand cubic feet a minute to stay at 50 ppm") {
  const Volume pint = us_gallon / 8;
  const AirState seventy{Temperature::fahrenheit(70), 101325 * pascal};
  const VolumeFlow source =
      vapour_volume(pint, 866 * kilogram_per_cubic_metre, 92.13 * gram_per_mole, seventy) / hour;
  CHECK(air_needed(source, VapourShare::ppm(50), 1.0 / 4).in(cubic_foot_per_minute) ==
        Approx(5050.8).epsilon(5e-3));
}

TEST_CASE("more air, better mixing or a larger room never raises a concentration") {
  CHECK(rc::check([] {
    const double volume = *rc::gen::inRange(1, 400), air = *rc::gen::inRange(0, 60),
                 mixing = *rc::gen::inRange(1, 10) / 10.0;
    const double minutes = *rc::gen::inRange(1, 300), start = *rc::gen::inRange(0, 3000);
    const auto of = [&](double v, double q, double m) {
      return concentration({v * cubic_metre, q * cubic_metre_per_minute, m}, toluene, VapourShare::ppm(start),
                           minutes * minute)
          .fraction();
    };
    const double now = of(volume, air, mixing);
    RC_ASSERT(of(volume, air + 1, mixing) <= now + 1e-15);
    RC_ASSERT(of(volume, air, mixing + 0.1) <= now + 1e-15);
    const Room room{volume * cubic_metre, air * cubic_metre_per_minute, mixing};
    const Room airier{volume * cubic_metre, (air + 1) * cubic_metre_per_minute, mixing};
    const Volume batch = minutes * minute * toluene;
    RC_ASSERT(worst_case(airier, batch, minutes * minute) <= worst_case(room, batch, minutes * minute));
    // The worst case bounds what the equation gives for the same batch into clean air.
    RC_ASSERT(worst_case(room, batch, minutes * minute).fraction() * (1 + 1e-12) >=
              concentration(room, toluene, VapourShare{}, minutes * minute).fraction());
  }));
}

// A slow twin: many small steps of the same balance.
TEST_CASE("the closed form follows the balance step by step") {
  const Room room = shed(0.4);
  double share = 0.002;
  const double dt = 0.05;  // s
  for (int i = 0; i < 12000; ++i) {
    share += dt * (toluene.si() - room.mixing * room.fresh_air.si() * share) / room.volume.si();
  }
  CHECK(concentration(room, toluene, VapourShare::fraction(0.002), 600 * second).fraction() ==
        Approx(share).epsilon(1e-4));
}

TEST_CASE(
    "a spray place becomes a room: the lesser of fan and air changes, and nothing where no opening leads "
    "outside") {
  shop::SprayPlace p = place();
  CHECK(room_of(p)->volume.in(cubic_metre) == Approx(40));
  CHECK(room_of(p)->fresh_air.in(cubic_metre_per_minute) == Approx(8));
  p.air_changes_per_hour = 6;
  CHECK(room_of(p)->fresh_air.in(cubic_metre_per_minute) == Approx(4));
  p.opening_to_outside = false;
  CHECK(room_of(p)->fresh_air == VolumeFlow{});
}

TEST_CASE("a place without size or with an impossible mixing factor is told") {
  shop::SprayPlace p = place();
  p.height = Length{};
  p.mixing = 1.4;
  const auto room = room_of(p);
  REQUIRE(!room.ok());
  CHECK(room.problems().size() == 2);
  p = place();
  p.mixing = std::nan("");
  CHECK(!room_of(p).ok());
}
