#include "core/materials/isotherm.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <cmath>
#include <limits>

using namespace dampward;
using namespace dampward::materials;

namespace {

double percent(Isotherm isotherm, double celsius, double humidity_percent) {
  const auto moisture = equilibrium_moisture(isotherm, Temperature::celsius(celsius),
                                             RelativeHumidity::percent(humidity_percent));
  REQUIRE(moisture);
  return moisture->percent();
}

constexpr Isotherm curves[] = {Isotherm::wood, Isotherm::paper, Isotherm::bleached_fibre};

}  // namespace

TEST_CASE("wood holds what the Wood Handbook's table says at 21 °C") {
  // Table 4-2 at 70 °F, values quoted in a public workshop program (read). The table prints one decimal; the equation is a
  // fit and parts from the table by 0.13 % on average and 0.9 % at most (abstract, forestprod.org, read).
  const struct {
    double humidity, moisture;
  } rows[] = {{30, 6.2}, {50, 9.2}, {65, 12.0}, {80, 16.0}};
  for (const auto& row : rows) {
    CAPTURE(row.humidity);
    CHECK(percent(Isotherm::wood, 21.11, row.humidity) == doctest::Approx(row.moisture).epsilon(0.01));
  }
}

TEST_CASE("wood holds what a public calculator of the same equation gives at 70 °F") {
  // stoves.bioenergylists.org/emccalc (read): humidity is printed in whole percent for a moisture, now rounded up (96.3 to 97),
  // now down (60.7 to 60), hence one percent of humidity either way.
  const struct {
    double humidity, moisture;
  } rows[] = {{25, 5.3}, {60, 11.1}, {84, 17.6}, {87, 19.0}, {97, 25.0}};
  for (const auto& row : rows) {
    CAPTURE(row.humidity);
    const double below = percent(Isotherm::wood, 21.11, row.humidity - 1);
    const double above = percent(Isotherm::wood, 21.11, row.humidity + 1);
    CHECK(below <= row.moisture);
    CHECK(row.moisture <= above);
  }
}

TEST_CASE("wood's equation gives 8.4 % at 140 °F and 55 %, where its table gives 8.0 %") {
  // Both printed at liquisearch.com/equilibrium_moisture_content (read): the equation is what is computed here.
  CHECK(percent(Isotherm::wood, 60, 55) == doctest::Approx(8.4).epsilon(0.006));
}

TEST_CASE("wood's Fahrenheit and metric coefficients agree to rounding") {
  // Metric set of FPL-RN-0268 (read): W = 349 + 1.29 T + 0.0135 T², K = 0.805 + 7.36e-4 T − 2.73e-6 T²,
  // K1 = 6.27 − 9.38e-3 T − 3.03e-4 T², K2 = 1.91 + 4.07e-2 T − 2.93e-4 T². Feeding °C into the °F set would be off by
  // several percent moisture, which this would show. Tolerance: three digits a coefficient.
  for (double t : {0.0, 20.0, 40.0, 71.1, 100.0}) {
    for (double h : {0.1, 0.5, 0.9}) {
      const double w = 349 + 1.29 * t + 0.0135 * t * t, k = 0.805 + 7.36e-4 * t - 2.73e-6 * t * t;
      const double k1 = 6.27 - 9.38e-3 * t - 3.03e-4 * t * t, k2 = 1.91 + 4.07e-2 * t - 2.93e-4 * t * t;
      const double kh = k * h;
      const double metric =
          1800 / w * (kh / (1 - kh) + (k1 * kh + 2 * k1 * k2 * kh * kh) / (1 + k1 * kh + k1 * k2 * kh * kh));
      CHECK(percent(Isotherm::wood, t, 100 * h) == doctest::Approx(metric).epsilon(0.01));
    }
  }
}

TEST_CASE("paper at 20 °C and 65 % holds what textbooks give for kraft paper") {
  // 8 to 9 % for kraft paper, 7 to 8 % for cotton at 65 % and 20 °C: the first from memory, the second read
  // (doi 10.1186/s40643-020-00339-1 table 10).
  CHECK(percent(Isotherm::paper, 20, 65) > 8);
  CHECK(percent(Isotherm::paper, 20, 65) < 9);
}

TEST_CASE("documented disagreement: in oven air the three stand-ins part by a factor of two") {
  // Regression values of three published equations, no proof: at 20 °C and 65 % wood is the middle one, in oven air of 71.1 °C
  // and 10 % bleached fibre keeps twice what paper keeps. Wood is within 30 % of either at 20 °C only.
  CHECK(percent(Isotherm::paper, 20, 65) == doctest::Approx(8.76).epsilon(0.002));
  CHECK(percent(Isotherm::wood, 20, 65) == doctest::Approx(12.0).epsilon(0.002));
  CHECK(percent(Isotherm::bleached_fibre, 20, 65) == doctest::Approx(13.5).epsilon(0.005));
  CHECK(percent(Isotherm::paper, 71.1, 10) == doctest::Approx(1.11).epsilon(0.005));
  CHECK(percent(Isotherm::wood, 71.1, 10) == doctest::Approx(1.64).epsilon(0.005));
  CHECK(percent(Isotherm::bleached_fibre, 71.1, 10) == doctest::Approx(2.26).epsilon(0.005));
}

TEST_CASE("bone-dry air leaves no water, and more humid air never leaves less") {
  rc::check([](unsigned which) {
    const Isotherm curve = curves[which % 3];
    const double t = *rc::gen::inRange(20, 90);
    const double a = *rc::gen::inRange(0, 1000) / 10.0;
    const double b = *rc::gen::inRange(0, 1000) / 10.0;
    RC_ASSERT(percent(curve, t, 0) == 0);
    RC_ASSERT(percent(curve, t, std::min(a, b)) <= percent(curve, t, std::max(a, b)));
  });
}

TEST_CASE("warmer air of the same humidity never leaves wood or paper wetter") {
  // Bleached fibre is left out: its fit crosses itself near saturation.
  rc::check([](bool of_wood) {
    const Isotherm curve = of_wood ? Isotherm::wood : Isotherm::paper;
    const double cooler = *rc::gen::inRange(20, 90), warmer = cooler + *rc::gen::inRange(1, 10);
    const double humidity = *rc::gen::inRange(5, 91);
    RC_ASSERT(percent(curve, warmer, humidity) <= percent(curve, cooler, humidity) + 1e-12);
  });
}

TEST_CASE("saturated air counts as 98 %, so no isotherm runs away") {
  for (Isotherm curve : curves) {
    CHECK(percent(curve, 30, 100) == percent(curve, 30, 98));
    CHECK(percent(curve, 30, 100) < 60);
  }
}

TEST_CASE("outside what was fitted there is no answer instead of a guess") {
  const auto at = [](Isotherm curve, double t, double h) {
    return equilibrium_moisture(curve, Temperature::celsius(t), RelativeHumidity::percent(h));
  };
  CHECK_FALSE(at(Isotherm::none, 20, 50));
  CHECK_FALSE(at(Isotherm::wood, 140, 50));
  CHECK_FALSE(at(Isotherm::paper, 171.5, 50));
  CHECK_FALSE(at(Isotherm::bleached_fibre, 5, 50));
  CHECK_FALSE(at(Isotherm::wood, 20, -1));
  CHECK_FALSE(at(Isotherm::wood, 20, 105));
  CHECK_FALSE(at(Isotherm::wood, 20, std::numeric_limits<double>::quiet_NaN()));
  CHECK_FALSE(at(Isotherm::wood, std::numeric_limits<double>::quiet_NaN(), 50));
}
