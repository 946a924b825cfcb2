#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <cmath>

#include "core/drying/lumped.h"
#include "core/drying/oven_model.h"
#include "sample.h"

using namespace dampward;
using namespace dampward::drying;

TEST_CASE("a thermocouple bead reaches 199 °C in 200 °C gas after 5.2 s") {
  // Incropera example 5.1 (from memory): τ 1 s from 25 °C.
  CHECK(lumped_temperature(Temperature::celsius(25), Temperature::celsius(200), 1 * second, 5.16 * second)
            .celsius() == doctest::Approx(199).epsilon(1e-4));
}

TEST_CASE("a chassis of 3.9 kJ/K is 63, 90 and 95 % warm after 19, 43 and 56 minutes") {
  // Regression values: 3901 J/K, 0.35 m², 10 W/(m² K), τ = 18.58 min.
  const Duration tau =
      time_constant(3901 * joule_per_kelvin, 0.35 * square_metre, 10 * watt_per_square_metre_kelvin).typical;
  CHECK(tau.in(minute) == doctest::Approx(18.58).epsilon(1e-3));
  const auto at = [&](double minutes) {
    return lumped_temperature(Temperature::celsius(0), Temperature::celsius(100), tau, minutes * minute)
        .celsius();
  };
  CHECK(at(18.58) == doctest::Approx(63.2).epsilon(2e-3));
  CHECK(at(42.77) == doctest::Approx(90).epsilon(2e-3));
  CHECK(at(55.65) == doctest::Approx(95).epsilon(2e-3));
}

TEST_CASE("archetype time constants follow from their own heat capacity and box") {
  // data/equipment (our own tables): heat capacity J/K, outer area m², middle side m, τ still and moving in
  // minutes. 3 %: their figures are rounded and their stream formula is Blasius', 2 % above ours.
  struct Row {
    const char* kind;
    double capacity, area, side, still, moving;
  };
  for (const Row& row : {Row{"receiver_base", 16700, 0.859, 0.400, 34.2, 21.3},
                         Row{"power_supply_mains", 7610, 0.333, 0.200, 38.6, 19.8},
                         Row{"transceiver_portable_valve", 5970, 0.487, 0.290, 21.2, 12.1},
                         Row{"transceiver_portable_transistor", 5340, 0.269, 0.280, 34.3, 19.4}}) {
    CAPTURE(row.kind);
    const auto tau = [&](AirMotion motion) {
      return time_constant(row.capacity * joule_per_kelvin, row.area * square_metre,
                           unit_coefficient(row.side * metre, motion));
    };
    CHECK(tau(AirMotion::still).typical.in(minute) == doctest::Approx(row.still).epsilon(0.03));
    CHECK(tau(AirMotion::moving).typical.in(minute) == doctest::Approx(row.moving).epsilon(0.03));
    CHECK(tau(AirMotion::still).low < tau(AirMotion::still).typical);
    CHECK(tau(AirMotion::still).typical < tau(AirMotion::still).high);
  }
}

TEST_CASE("the heaviest iron of a set warms more slowly than the set") {
  const auto heavy = heavy_lump_time_constant(sample::radio(), {}, sample::table(), AirMotion::still);
  REQUIRE(heavy.has_value());
  CHECK(heavy->typical > Duration{});
  CHECK(!heavy_lump_time_constant(sample::radio(), {PartId("core")}, sample::table(), AirMotion::still)
             .has_value());
}

TEST_CASE("parts that are out of the oven take no heat") {
  const auto all = heat_capacity(sample::radio(), {}, sample::table());
  const auto less = heat_capacity(sample::radio(), {PartId("case")}, sample::table());
  CHECK((all.typical - less.typical).si() == doctest::Approx(4000));  // 4 kg at 1000 J/(kg K)
}

TEST_CASE("an oven whose heat ends below the set point is told so") {
  const OvenHeat oven{100 * watt, 5 * watt_per_kelvin, 4000 * joule_per_kelvin};
  CHECK(reachable(oven, Temperature::celsius(30)).celsius() == doctest::Approx(50));
}

TEST_CASE("the oven in two nodes loses through its walls what the oven in one does") {
  const OvenHeat one = oven_heat(sample::cabinet(), sample::wall(), Loss::typical);
  const OvenNodes two =
      oven_nodes(sample::cabinet(), sample::wall(), Loss::typical, sample::shop_air(60, 15));
  const double through = 1 / (1 / two.inside.si() + 1 / two.outside.si());
  CHECK(through + two.vented.si() == doctest::Approx(one.loss.si()));
  CHECK((two.air + two.lining).si() == doctest::Approx(one.own.si()));
}

TEST_CASE("an oven draws no more than its supply gives") {
  shop::Oven oven = sample::cabinet();
  oven.supply = 1 * kilowatt;
  CHECK(oven_heat(oven, sample::wall(), Loss::typical).available == 1 * kilowatt);
  CHECK(oven_heat(oven, sample::wall(), Loss::highest).loss >
        oven_heat(oven, sample::wall(), Loss::typical).loss);
}

TEST_CASE("a 250 W lamp lights 1852, 823 and 463 W/m² at 0.30, 0.45 and 0.60 m") {
  // Regression values for 80 % radiant into 1.2 sr, a doubtful estimate; 1.2 sr is a cone of 72 degrees.
  shop::Oven oven = sample::lamp_locker();
  const double beam = 2 * std::acos(1 - 1.2 / (2 * 3.14159265358979)) * 180 / 3.14159265358979;
  const auto flux = [&](double metres) {
    oven.lamps = shop::Lamps{1, 250 * watt, metres * metre, beam, 0.8};
    return lamp_flux(oven).si();
  };
  CHECK(flux(0.30) == doctest::Approx(1852).epsilon(1e-3));
  CHECK(flux(0.45) == doctest::Approx(823).epsilon(1e-3));
  CHECK(flux(0.60) == doctest::Approx(463).epsilon(1e-3));
}

TEST_CASE(
    "a lit dark part stands tens of kelvins above the air, so air temperature is no limit control with "
    "lamps") {
  // An estimate with a fixed 12 W/(m² K) gave 62 K at 823 W/m². Ours lets convection grow with the rise and
  // the surface be darker.
  shop::Oven oven = sample::lamp_locker();
  oven.air_moves = false;
  oven.lamps = shop::Lamps{1, 250 * watt, 0.45 * metre, 72.0, 0.8};
  const double rise = lamp_rise(oven, Temperature::celsius(49)).in(kelvin);
  CHECK(rise > 40);
  CHECK(rise < 70);
}

TEST_CASE("more lamps, nearer lamps and narrower beams never light less") {
  rc::check([] {
    shop::Oven oven = sample::cabinet();
    const int count = *rc::gen::inRange(1, 10);
    const double distance = *rc::gen::inRange(20, 100) / 100.0, beam = *rc::gen::inRange(30, 360);
    const auto flux = [&](int lamps, double metres, double degrees) {
      oven.lamps = shop::Lamps{lamps, 100 * watt, metres * metre, degrees, 0.8};
      return lamp_flux(oven);
    };
    RC_ASSERT(flux(count + 1, distance, beam) >= flux(count, distance, beam));
    oven.lamps->count = 1;
    RC_ASSERT(flux(1, distance * 0.9, beam) > flux(1, distance, beam));
    RC_ASSERT(flux(1, distance, beam * 0.9) > flux(1, distance, beam));
  });
}

TEST_CASE("lamps without distance or beam are not reckoned with") {
  shop::Oven oven = sample::lamp_locker();
  CHECK(!lamp_fault(oven).has_value());
  oven.lamps->distance = {};
  CHECK(lamp_fault(oven).has_value());
  oven.lamps->distance = 1 * metre;
  oven.lamps->beam_degrees = 0;
  CHECK(lamp_fault(oven).has_value());
}
