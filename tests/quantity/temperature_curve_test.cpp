#include "core/quantity/temperature_curve.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <algorithm>

using namespace dampward;

TEST_CASE("a temperature curve is straight between its points and level outside them") {
  const TemperatureCurve curve({{0 * minute, Temperature::celsius(28)},
                                {60 * minute, Temperature::celsius(68)},
                                {180 * minute, Temperature::celsius(68)}});
  CHECK(curve.at(-5 * minute).celsius() == doctest::Approx(28));
  CHECK(curve.at(30 * minute).celsius() == doctest::Approx(48));
  CHECK(curve.at(60 * minute).celsius() == doctest::Approx(68));
  CHECK(curve.at(400 * minute).celsius() == doctest::Approx(68));
  CHECK(curve.peak().celsius() == doctest::Approx(68));
}

TEST_CASE("a door opened at one moment makes a step in the curve") {
  const TemperatureCurve curve({{0 * minute, Temperature::celsius(70)},
                                {10 * minute, Temperature::celsius(70)},
                                {10 * minute, Temperature::celsius(30)}});
  CHECK(curve.at(9.999 * minute).celsius() == doctest::Approx(70));
  CHECK(curve.at(10 * minute).celsius() == doctest::Approx(30));
}

TEST_CASE("property: between its points a curve stays between its coldest and its peak") {
  CHECK(rc::check([](const std::vector<int>& degrees, int when) {
    RC_PRE(!degrees.empty());
    std::vector<TemperatureCurve::Point> points;
    for (int degree : degrees) {
      points.push_back({static_cast<double>(points.size()) * minute, Temperature::celsius(degree % 200)});
    }
    const TemperatureCurve curve(points);
    const auto colder = [](const auto& a, const auto& b) { return a.temperature < b.temperature; };
    const Temperature coldest = std::min_element(points.begin(), points.end(), colder)->temperature;
    const Temperature now = curve.at((when % 1000) * second);
    RC_ASSERT(now <= curve.peak() + 1e-9 * kelvin);
    RC_ASSERT(coldest <= now + 1e-9 * kelvin);
  }));
}
