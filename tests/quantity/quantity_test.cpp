#include "core/quantity/quantity.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <type_traits>

#include "core/quantity/range.h"
#include "core/quantity/shares.h"
#include "core/quantity/temperature.h"

using namespace dampward;

namespace {

template <class A, class B>
concept can_add = requires(A a, B b) { a + b; };
template <class A, class B>
concept can_compare = requires(A a, B b) { a < b; };

}  // namespace

TEST_CASE("two temperatures cannot be added, and a step is no temperature") {
  static_assert(!can_add<Temperature, Temperature>);
  static_assert(can_add<Temperature, TemperatureStep>);
  static_assert(std::is_same_v<decltype(Temperature{} - Temperature{}), TemperatureStep>);
  static_assert(!can_compare<Temperature, TemperatureStep>);
  CHECK(true);
}

TEST_CASE("humidity, moisture and vapour are shares of different wholes and never mix") {
  static_assert(!can_compare<RelativeHumidity, MoistureContent>);
  static_assert(!can_compare<VapourShare, MassShare>);
  static_assert(!can_add<Length, Mass>);
  CHECK(RelativeHumidity::percent(65) == RelativeHumidity::fraction(0.65));
  CHECK(VapourShare::ppm(500).percent() == doctest::Approx(0.05));
}

// SI brochure (BIPM, 9th ed. 2019) for the SI; NIST Handbook 44, appendix C, for the others: exact by definition (from memory).
TEST_CASE("units stand in their published ratios") {
  CHECK(inch.in(millimetre) == doctest::Approx(25.4));
  CHECK(foot.in(inch) == doctest::Approx(12));
  CHECK(mil.in(micrometre) == doctest::Approx(25.4));
  CHECK(pound.in(gram) == doctest::Approx(453.59237));
  CHECK(ounce.in(gram) == doctest::Approx(28.349523125));
  CHECK(us_gallon.in(litre) == doctest::Approx(3.785411784));
  CHECK(cubic_foot.in(litre) == doctest::Approx(28.316846592));
  CHECK((2118.88 * cubic_foot_per_minute).in(cubic_metre / second) == doctest::Approx(1).epsilon(1e-5));
  CHECK(day.in(hour) == doctest::Approx(24));
  CHECK((1 * milligram_per_square_metre_day).si() == doctest::Approx(1e-6 / 86400));
}

// Fixed points of the scales: water freezes at 0 °C, 32 °F, 273.15 K (SI brochure 2019, section 2.3.1).
TEST_CASE("the three temperature scales meet where they should") {
  CHECK(Temperature{}.celsius() == doctest::Approx(0));
  CHECK(Temperature::fahrenheit(32).kelvins() == doctest::Approx(273.15));
  CHECK(Temperature::fahrenheit(160).celsius() == doctest::Approx(71.1111).epsilon(1e-5));
  CHECK(Temperature::celsius(-40).fahrenheit() == doctest::Approx(-40));
  CHECK((Temperature::fahrenheit(160) - Temperature::fahrenheit(150)).in(kelvin) ==
        doctest::Approx(5.5556).epsilon(1e-4));
  CHECK((10 * fahrenheit_step).in(kelvin) == doctest::Approx(5.5556).epsilon(1e-4));
}

TEST_CASE("dimensions multiply and divide into each other") {
  const Mass mass = 2 * kilogram_per_litre * (3 * litre);
  CHECK(mass.in(kilogram) == doctest::Approx(6));
  const double changes = (30 * cubic_metre_per_hour) * (2 * hour) / (30 * cubic_metre);
  CHECK(changes == doctest::Approx(2));
  static_assert(std::is_same_v<decltype(watt * second), Energy>);
  static_assert(std::is_same_v<decltype(1.0 / second * litre), VolumeFlow>);
}

TEST_CASE("a range of one value is exact, and order is asked for, not assumed") {
  CHECK(Range<Mass>(2 * kilogram).exact());
  CHECK(Range<double>(1, 2, 3).ordered());
  CHECK_FALSE(Range<double>(1, 4, 3).ordered());
}

TEST_CASE("property: a quantity read in the unit it was made of gives its number back") {
  CHECK(rc::check([](int thousandths) {
    const double number = thousandths / 1000.0;
    for (Length unit : {metre, millimetre, inch, mil}) {
      RC_ASSERT(std::abs((number * unit).in(unit)-number) <= 1e-12 * std::abs(number));
    }
    RC_ASSERT(std::abs(Temperature::fahrenheit(number).fahrenheit() - number) <=
              1e-9 * (1 + std::abs(number)));
  }));
}
