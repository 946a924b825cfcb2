// What must always be true of moist air.
#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <cmath>
#include <limits>

#include "core/moist_air/humid_air.h"
#include "core/moist_air/saturation.h"

using namespace dampward;
using namespace dampward::moist_air;

namespace {

// A value between two bounds, in thousandths of their distance.
double between(double low, double high) {
  return low + (high - low) * *rc::gen::inRange(0, 1001) / 1000.0;
}

HumidAir any_air() {
  return {Temperature::celsius(between(-40, 60)), RelativeHumidity::percent(between(1, 100)),
          between(60000, 105000) * pascal};
}

}  // namespace

TEST_CASE("dew point and saturation pressure undo each other") {
  CHECK(rc::check([] {
    const Temperature t = Temperature::celsius(between(-99.9, 199.9));
    RC_ASSERT(std::abs((saturation_temperature(saturation_pressure(t)) - t).in(kelvin)) < 1e-6);
  }));
}

TEST_CASE("warmer air can hold more") {
  for (double t = -100; t < 200; t += 0.25) {
    CAPTURE(t);
    CHECK(saturation_pressure(Temperature::celsius(t)) < saturation_pressure(Temperature::celsius(t + 0.25)));
  }
}

TEST_CASE("the wet bulb lies between dew point and air temperature") {
  CHECK(rc::check([] {
    const HumidAir air = any_air();
    const Temperature bulb = wet_bulb(air);
    // Near 0 °C the ice and water forms meet with a small jump.
    RC_ASSERT(bulb >= dew_point(air) - 1e-3 * kelvin);
    RC_ASSERT(bulb <= air.temperature + 1e-6 * kelvin);
  }));
}

TEST_CASE("the wet bulb gives its air back") {
  CHECK(rc::check([] {
    const HumidAir air = any_air();
    const Temperature bulb = wet_bulb(air);
    RC_PRE(std::abs(bulb.celsius()) > 1e-3);
    const HumidAir back = from_wet_bulb(air.temperature, bulb, air.pressure);
    RC_ASSERT(std::abs(back.humidity.percent() - air.humidity.percent()) < 1e-4);
  }));
}

TEST_CASE("every reading of one air makes the same air") {
  CHECK(rc::check([] {
    const HumidAir air = any_air();
    const auto same = [&](const HumidAir& other) {
      RC_ASSERT(std::abs(other.humidity.percent() - air.humidity.percent()) < 1e-6);
    };
    same(from_vapour_pressure(air.temperature, vapour_pressure(air), air.pressure));
    same(from_dew_point(air.temperature, dew_point(air), air.pressure));
    same(from_humidity_ratio(air.temperature, humidity_ratio(air), air.pressure));
    same(brought_to(brought_to(air, Temperature::celsius(71)), air.temperature));
  }));
}

TEST_CASE("heating air dries it and leaves its dew point alone") {
  CHECK(rc::check([] {
    const HumidAir air = any_air();
    const HumidAir hot = brought_to(air, air.temperature + between(1, 60) * kelvin);
    RC_ASSERT(hot.humidity < air.humidity);
    RC_ASSERT(std::abs((dew_point(hot) - dew_point(air)).in(kelvin)) < 1e-6);
  }));
}

TEST_CASE("damp air is lighter than dry air") {
  CHECK(rc::check([] {
    const HumidAir air = any_air();
    RC_ASSERT(density(air) < density({air.temperature, RelativeHumidity::fraction(0), air.pressure}));
  }));
}

TEST_CASE("no reading makes infinity of the saturation pressure or the dew point") {
  for (const double t : {-1e300, -300.0, -273.15, -100.1, 200.1, 1e4, 1e300}) {
    CAPTURE(t);
    CHECK(std::isfinite(saturation_pressure(Temperature::celsius(t)).si()));
    CHECK_FALSE(in_range(Temperature::celsius(t)));
  }
  for (const double p : {-1e300, -1.0, 0.0, 1e-300, 1e7, 1e300, std::numeric_limits<double>::quiet_NaN()}) {
    CAPTURE(p);
    const Temperature t = saturation_temperature(p * pascal);
    CHECK(t >= coldest);
    CHECK(t <= hottest);
  }
}

TEST_CASE("air outside the stated range says so") {
  const RelativeHumidity half = RelativeHumidity::percent(50);
  CHECK(in_range(HumidAir{Temperature::celsius(30), half}));
  CHECK_FALSE(in_range(HumidAir{Temperature::celsius(30), RelativeHumidity::percent(101)}));
  CHECK_FALSE(in_range(HumidAir{Temperature::celsius(30), RelativeHumidity::percent(-1)}));
  CHECK_FALSE(in_range(HumidAir{Temperature::celsius(201), half}));
  CHECK_FALSE(
      in_range(HumidAir{Temperature::celsius(150), half}));  // its vapour alone presses harder than the air
  CHECK_FALSE(in_range(HumidAir{Temperature::celsius(std::numeric_limits<double>::quiet_NaN()), half}));
  CHECK_FALSE(in_range(HumidAir{Temperature::celsius(30), RelativeHumidity::fraction(std::nan(""))}));
  // A wet bulb lower than any dry air could bring it.
  CHECK_FALSE(
      in_range(from_wet_bulb(Temperature::celsius(40), Temperature::celsius(-5), sea_level_pressure)));
}
