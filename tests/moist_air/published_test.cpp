// Published values of moist air, each with its source beside it.
#include <doctest/doctest.h>

#include <cmath>

#include "core/moist_air/deliquescence.h"
#include "core/moist_air/humid_air.h"
#include "core/moist_air/saturation.h"

using namespace dampward;
using namespace dampward::moist_air;
using doctest::Approx;

namespace {

Temperature celsius(double t) {
  return Temperature::celsius(t);
}
RelativeHumidity percent(double value) {
  return RelativeHumidity::percent(value);
}
HumidityRatio ratio(double value) {
  return HumidityRatio::fraction(value);
}

}  // namespace

TEST_CASE("water and ice press as the handbook's table says") {
  // ASHRAE Handbook Fundamentals 2017 ch. 1 table 3, as quoted by the tests of psychrolib. Tolerance 0.03 %: the table
  // is made with a later formulation of water than Hyland and Wexler's.
  const struct {
    double t, pascals;
  } rows[] = {{-20, 103.24}, {-5, 401.74},    {5, 872.6},     {25, 3169.7},
              {50, 12351.3}, {100, 101418.0}, {150, 476101.4}};
  for (const auto& row : rows) {
    CAPTURE(row.t);
    CHECK(saturation_pressure(celsius(row.t)).in(pascal) == Approx(row.pascals).epsilon(3e-4));
  }
  CHECK(std::abs(saturation_pressure(celsius(-60)).in(pascal)-1.08) < 0.01);
}

TEST_CASE("saturation agrees with the steam tables between 20 and 80 °C") {
  // IAPWS-IF97 region 4 at 30 °C and 160 °F (computed from its equation): Hyland and Wexler differ by 0.007 to 0.018 %.
  CHECK(saturation_pressure(celsius(30)).in(pascal) == Approx(4246.69).epsilon(2e-4));
  CHECK(saturation_pressure(celsius(71.111)).in(pascal) == Approx(32730.8).epsilon(2e-4));
}

TEST_CASE("dew point of 25 °C air at 80 % is that of the published example") {
  // psychrolib, src/vba/psychrolib.bas, header: 21.309397163661785 °C.
  CHECK(dew_point({celsius(25), percent(80)}).celsius() == Approx(21.309397163661785).epsilon(1e-6));
}

TEST_CASE("air at 40 °C with a 20 °C wet bulb is the handbook's example 1") {
  // ASHRAE Handbook Fundamentals 2017 ch. 1 example 1, read from a chart: W 0.0065, dew point 7 °C, 14 %, h 56.7 kJ/kg,
  // v 0.896 m³/kg. Tolerances are those of a chart.
  const HumidAir air = from_wet_bulb(celsius(40), celsius(20), sea_level_pressure);
  CHECK(std::abs(humidity_ratio(air).fraction() - 0.0065) < 1e-4);
  CHECK(std::abs(dew_point(air).celsius() - 7) < 0.5);
  CHECK(std::abs(air.humidity.percent() - 14) < 1);
  CHECK(std::abs(enthalpy(air).si() - 56700) < 100);
  CHECK(specific_volume(air).si() == Approx(0.896).epsilon(0.01));
}

TEST_CASE("heat content and volume of 30 °C air holding 20 g/kg are the published ones") {
  // psychrolib tests, from ASHRAE ch. 1 eq. 30 and 26: 81316 J/kg and, at 95461 Pa, 0.940855374352943 m³/kg.
  const HumidAir air = from_humidity_ratio(celsius(30), ratio(0.02), 95461 * pascal);
  CHECK(enthalpy(air).si() == Approx(81316).epsilon(1e-6));
  CHECK(specific_volume(air).si() == Approx(0.940855374352943).epsilon(1e-6));
}

TEST_CASE(
    "saturated air holds what the handbook's table 2 prints, less the enhancement factor we leave out") {
  // ASHRAE Handbook Fundamentals 2017 ch. 1 table 2. Ours is 0.5, 0.6 and 1.2 % low: hence 0.5, 1 and 2 %.
  CHECK(humidity_ratio({celsius(25), percent(100)}).fraction() == Approx(0.020173).epsilon(0.005));
  CHECK(humidity_ratio({celsius(50), percent(100)}).fraction() == Approx(0.086863).epsilon(0.01));
  CHECK(humidity_ratio({celsius(85), percent(100)}).fraction() == Approx(0.838105).epsilon(0.02));
}

TEST_CASE("the wet bulb over ice and over water gives the published humidity ratios") {
  // psychrolib tests (ASHRAE ch. 1 eq. 33 and 35) at 95461 Pa; 3e-4 is their own tolerance.
  CHECK(humidity_ratio(from_wet_bulb(celsius(30), celsius(25), 95461 * pascal)).fraction() ==
        Approx(0.0192281274241096).epsilon(3e-4));
  CHECK(humidity_ratio(from_wet_bulb(celsius(-1), celsius(-5), 95461 * pascal)).fraction() ==
        Approx(0.00120399819933844).epsilon(3e-4));
}

TEST_CASE("the standard atmosphere thins as the handbook's table 1 says") {
  // ASHRAE Handbook Fundamentals 2017 ch. 1 table 1; printed to 1 Pa.
  const struct {
    double metres, pascals;
  } rows[] = {{-500, 107478}, {0, 101325}, {500, 95461}, {1000, 89875}, {4000, 61640}, {10000, 26436}};
  for (const auto& row : rows) {
    CAPTURE(row.metres);
    CHECK(std::abs(standard_pressure(row.metres * metre).in(pascal)-row.pascals) <= 1);
  }
}

TEST_CASE("hot damp shop air keeps its regression values") {
  // Regression values: computed once from the stated equations outside this program, at 101325 Pa.
  const struct {
    double t, rh, pw, w, dew, bulb, grams, at_160_f;
  } rows[] = {{30, 80, 3396.8, 0.021573, 26.169, 27.091, 24.278, 10.38},
              {32, 85, 4044.8, 0.025859, 29.157, 29.768, 28.720, 12.36},
              {35, 70, 3939.5, 0.025159, 28.701, 30.059, 27.700, 12.04},
              {28, 95, 3593.1, 0.022866, 27.123, 27.329, 25.852, 10.98}};
  for (const auto& row : rows) {
    CAPTURE(row.t);
    const HumidAir air{celsius(row.t), percent(row.rh)};
    CHECK(vapour_pressure(air).in(pascal) == Approx(row.pw).epsilon(2e-5));
    CHECK(humidity_ratio(air).fraction() == Approx(row.w).epsilon(3e-5));
    CHECK(std::abs(dew_point(air).celsius() - row.dew) < 6e-4);
    CHECK(std::abs(wet_bulb(air).celsius() - row.bulb) < 6e-4);
    CHECK(vapour_density(air).si() * 1000 == Approx(row.grams).epsilon(3e-5));
    CHECK(std::abs(brought_to(air, Temperature::fahrenheit(160)).humidity.percent() - row.at_160_f) < 6e-3);
  }
}

TEST_CASE("a surface 2 K below 30 °C air at 85 % stands at 95 %") {
  // Regression value: 95.42 %.
  CHECK(std::abs(brought_to({celsius(30), percent(85)}, celsius(28)).humidity.percent() - 95.42) < 6e-3);
}

TEST_CASE("salts turn to brine at the humidities of the CRC table") {
  // CRC Handbook, constant humidity solutions (A. Wexler), column RH (25 °C), printed to 1 %.
  const struct {
    Salt salt;
    double at_25;
  } rows[] = {{Salt::lithium_chloride, 11},   {Salt::magnesium_chloride, 33}, {Salt::sodium_chloride, 75},
              {Salt::potassium_chloride, 84}, {Salt::potassium_nitrate, 92},  {Salt::potassium_sulphate, 97}};
  for (const auto& row : rows) {
    CAPTURE(row.at_25);
    CHECK(std::abs(deliquescence(row.salt, celsius(25)).percent() - row.at_25) <= 0.5);
  }
}

TEST_CASE("table salt turns to brine near 75 % from 0 to 50 °C") {
  // Wexler and Hasegawa 1954, J. Res. NBS 53:19, abstract: 74.9 % at 0, 75.6 % at 30, 74.7 % at 50 °C. The CRC constants
  // are good to ±2 % of the value: 1.5 points.
  const struct {
    double t, rh;
  } rows[] = {{0, 74.9}, {30, 75.6}, {50, 74.7}};
  for (const auto& row : rows) {
    CAPTURE(row.t);
    CHECK(std::abs(deliquescence(Salt::sodium_chloride, celsius(row.t)).percent() - row.rh) < 1.5);
  }
}
