#include "adapters/files/quantity_text.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <string>

#include "core/base/format.h"

using namespace dampward;
using namespace dampward::files;

namespace {

// What a person is told of a text that cannot be read.
template <class T>
Problem told(std::string_view text, Decimal decimal = Decimal::point) {
  const auto result = range_from_text<T>(text, decimal);
  REQUIRE_FALSE(result.ok());
  return result.problems().front();
}

bool says(const std::string& text, std::string_view part) {
  return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("a temperature is read in either scale") {
  CHECK(quantity_from_text<Temperature>("71 °C")->celsius() == doctest::Approx(71));
  CHECK(quantity_from_text<Temperature>("160 °F")->celsius() == doctest::Approx(71.111).epsilon(1e-4));
  CHECK(quantity_from_text<Temperature>("71C")->celsius() == doctest::Approx(71));
  CHECK(quantity_from_text<Temperature>("-5 °C")->celsius() == doctest::Approx(-5));
  CHECK(quantity_from_text<Temperature>("−5 °C")->celsius() == doctest::Approx(-5));
}

TEST_CASE("a difference of temperatures has no zero point") {
  CHECK(quantity_from_text<TemperatureStep>("5 K")->si() == doctest::Approx(5));
  CHECK(quantity_from_text<TemperatureStep>("9 F°")->si() == doctest::Approx(5));
  CHECK(quantity_from_text<TemperatureStep>("9 °F")->si() == doctest::Approx(5));
}

// Exact by definition of the international inch and pound and the US gallon (NIST Handbook 44, appendix C; from memory).
TEST_CASE("inches, pounds, gallons and cubic feet come out in SI") {
  CHECK(quantity_from_text<Length>("10 in")->in(millimetre) == doctest::Approx(254));
  CHECK(quantity_from_text<Length>("2 mil")->in(micrometre) == doctest::Approx(50.8));
  CHECK(quantity_from_text<Mass>("1 lb")->in(gram) == doctest::Approx(453.59237));
  CHECK(quantity_from_text<Volume>("0.5 gal")->in(litre) == doctest::Approx(1.892705892));
  CHECK(quantity_from_text<VolumeFlow>("400 cfm")->in(cubic_metre_per_minute) ==
        doctest::Approx(11.3267).epsilon(1e-5));
}

TEST_CASE("the measures of a workshop are read") {
  CHECK(quantity_from_text<Duration>("3 h")->in(minute) == doctest::Approx(180));
  CHECK(quantity_from_text<Power>("2.4 kW")->si() == doctest::Approx(2400));
  CHECK(quantity_from_text<Area>("0.9 m²")->si() == doctest::Approx(0.9));
  CHECK(quantity_from_text<Density>("0.95 kg/L")->si() == doctest::Approx(950));
  CHECK(quantity_from_text<DepositionRate>("60 mg/m2/d")->in(milligram_per_square_metre_day) ==
        doctest::Approx(60));
  CHECK(quantity_from_text<MassShare>("30 %")->fraction() == doctest::Approx(0.3));
  CHECK(quantity_from_text<VapourShare>("500 ppm")->ppm() == doctest::Approx(500));
  CHECK(quantity_from_text<HeatTransferCoefficient>("5 W/(m²·K)")->si() == doctest::Approx(5));
  CHECK(quantity_from_text<Angle>("60 deg")->degrees == doctest::Approx(60));
  CHECK(quantity_from_text<double>("3").value() == doctest::Approx(3));
}

TEST_CASE("a range holds lowest, usual and highest") {
  const auto three = range_from_text<Mass>("13..20..30 g").value();
  CHECK(three.low.in(gram) == doctest::Approx(13));
  CHECK(three.typical.in(gram) == doctest::Approx(20));
  CHECK(three.high.in(gram) == doctest::Approx(30));
  const auto two = range_from_text<Mass>("13..30 g").value();
  CHECK(two.typical.in(gram) == doctest::Approx(21.5));
  CHECK(range_from_text<Mass>("20 g")->exact());
  CHECK(range_from_text<double>("30..55..100")->high == doctest::Approx(100));
}

TEST_CASE("each number of a range may carry its own unit") {
  const auto mixed = range_from_text<Temperature>("160 °F..75 °C").value();
  CHECK(mixed.low.celsius() == doctest::Approx(71.1).epsilon(1e-3));
  CHECK(mixed.high.celsius() == doctest::Approx(75));
  CHECK(range_from_text<Length>("900 mm .. 1.1 m")->high.in(metre) == doctest::Approx(1.1));
}

TEST_CASE("a temperature without unit is refused and told what is missing") {
  const Problem problem = told<Temperature>("71");
  CHECK(problem.found == "\"71\", which has no unit");
  CHECK(says(problem.expected, "71 °C or 160 °F"));
}

TEST_CASE("71 bananas are no temperature") {
  const Problem problem = told<Temperature>("71 bananas");
  CHECK(problem.found == "\"71 bananas\", whose unit \"bananas\" is not known");
  CHECK(says(problem.next, "°C"));
}

TEST_CASE("a unit of another measure is named as such") {
  CHECK(told<Temperature>("71 mm").found == "\"71 mm\", which is a length");
  CHECK(says(told<Mass>("3 h").found, "which is a time"));
}

TEST_CASE("what is no number, not finite or beyond a workshop is refused") {
  CHECK(says(told<Mass>("NaN kg").found, "no finite number"));
  CHECK(says(told<Mass>("inf kg").found, "no finite number"));
  CHECK(says(told<Mass>("1e300 kg").found, "larger than anything in a workshop"));
  CHECK(says(told<Mass>("1e999 kg").found, "too large for any number"));
  CHECK(says(told<Mass>("-2 kg").found, "below zero"));
  CHECK(says(told<Temperature>("-400 °C").found, "lower than anything real"));
  CHECK(says(told<Mass>("heavy").found, "holds no number"));
  CHECK(told<Mass>("").found == "nothing");
  CHECK(says(told<MassShare>("130 %").found, "larger"));
  CHECK(says(told<double>("3 pieces").found, "more than a number"));
}

TEST_CASE("a range that falls or is written with a dash is refused") {
  CHECK(says(told<Mass>("30..13 g").found, "a range that falls"));
  CHECK(says(told<Duration>("15-20 min").next, "two points"));
  CHECK(says(told<Mass>("1..2..3..4 g").found, "more than three"));
  CHECK_FALSE(quantity_from_text<Mass>("1..2 g").ok());
}

TEST_CASE("a decimal comma counts only where a spreadsheet may write it") {
  CHECK(quantity_from_text<Volume>("2,5 L", Decimal::either)->in(litre) == doctest::Approx(2.5));
  CHECK(quantity_from_text<Volume>("2.5 L", Decimal::either)->in(litre) == doctest::Approx(2.5));
  CHECK(range_from_text<Volume>("2,5..3,5 L", Decimal::either)->high.in(litre) == doctest::Approx(3.5));
  CHECK(says(told<Volume>("2,5 L").found, "comma"));
}

TEST_CASE("a number that may mean two things a thousand times apart is refused") {
  CHECK(says(told<Volume>("1,500 L", Decimal::either).found, "two numbers"));
  CHECK(says(told<Volume>("1.500 L", Decimal::comma).found, "two numbers"));
  CHECK(quantity_from_text<Volume>("1.500 L", Decimal::either)->in(litre) == doctest::Approx(1.5));
  CHECK(quantity_from_text<Volume>("0,500 L", Decimal::either)->in(litre) == doctest::Approx(0.5));
}

TEST_CASE("property: every number written with a unit is read back") {
  CHECK(rc::check([](int thousandths) {
    const double kilograms = std::abs(thousandths % 1000000) / 1000.0;
    const auto mass = quantity_from_text<Mass>(format("{} kg", kilograms));
    const auto comma = [&] {
      std::string text = format("{:.2f} kg", kilograms);
      text[text.find('.')] = ',';
      return quantity_from_text<Mass>(text, Decimal::either);
    }();
    RC_ASSERT(mass.ok());
    RC_ASSERT(std::abs(mass->si() - kilograms) < 1e-9);
    RC_ASSERT(comma.ok());
    RC_ASSERT(std::abs(comma->si() - kilograms) < 0.0051);
  }));
}

TEST_CASE("property: no text at all makes the reader stumble") {
  CHECK(rc::check([](const std::string& text) {
    (void)range_from_text<Temperature>(text, Decimal::either);
    (void)quantity_from_text<double>(text, Decimal::comma);
    (void)range_from_text<Mass>("12" + text);
  }));
}
