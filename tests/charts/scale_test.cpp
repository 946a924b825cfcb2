#include "core/charts/scale.h"

#include <doctest/doctest.h>

#include <cmath>

#include "core/charts/alignment.h"
#include "core/charts/round_figure.h"
#include "core/charts/ticks.h"

using namespace dampward;
using namespace dampward::charts;

TEST_CASE("a scale gives back the figure whose place it gave") {
  const Scale bent(1, 20, [](double v) { return Place{100 + 3 * std::sin(v / 10), 200 - 60 * std::log(v)}; });
  for (double v = 1; v <= 20; v += 0.37) {
    const Place place = bent.at(v);
    CHECK(bent.across_from(place, v) == doctest::Approx(v));
    CHECK(bent.crossed_by(place, {place.x + 40, place.y + 1}).value() == doctest::Approx(v).epsilon(1e-6));
  }
  CHECK_FALSE(bent.at_height(500));
}

TEST_CASE("a place beside a figure lies so many millimetres along") {
  const Scale even(0, 10, [](double v) { return Place{50, 200 - 8 * v}; });
  CHECK(even.stretch(3) == doctest::Approx(8));
  CHECK(even.beside(3, 0.5).y == doctest::Approx(200 - 24 - 0.5));
  CHECK(even.across_from({51, 200 - 100}, 9) == doctest::Approx(12.5));  // past its end
}

TEST_CASE("three scales stand on one ruler for every pair, whatever weights and moduli") {
  // 2 u + 0.5 v = c: the third scale stands where the weights say, not in the middle.
  const Upright first{20, 250, 10}, second{170, 240, 4};
  const Scale u(0, 10, [&](double x) { return first.at(x); });
  const Scale v(0, 30, [&](double x) { return second.at(x); });
  const Scale c(0, 35, [&](double x) { return on_one_ruler(first, second, 2, 0.5, x); });
  const Alignment chart{u, v, c};
  for (double a = 0; a <= 10; a += 0.7) {
    for (double b = 0; b <= 30; b += 1.9)
      CHECK(chart.read(a, b).value() == doctest::Approx(2 * a + 0.5 * b).epsilon(1e-9));
  }
}

TEST_CASE("the error told is the error of the worst hand") {
  // Sum of two even scales, 10 mm a unit; the middle has 5. Half a millimetre at each place: 0.5/10 twice and 0.5/5.
  const Upright first{0, 100, 10}, second{100, 100, 10};
  const Alignment chart{Scale(0, 10, [&](double x) { return first.at(x); }),
                        Scale(0, 10, [&](double x) { return second.at(x); }),
                        Scale(0, 20, [&](double x) { return on_one_ruler(first, second, 1, 1, x); })};
  CHECK(misreading_at(chart, 4, 5).most == doctest::Approx(0.2));
  CHECK(worst_misreading(chart).most == doctest::Approx(0.2));
  CHECK(misreading_at(chart, 4, 5, 0.25).most == doctest::Approx(0.1));
}

TEST_CASE("ticks rise, keep their distances and part every named gap evenly") {
  const Scale scales[] = {
      Scale(15, 40, [](double t) { return Place{30, 200 - 6 * t}; }),
      Scale(18, 38, [](double t) { return Place{30, 400 - 140 * 0.06 * t + 0.02 * t * t}; }),
      Scale(0.2, 200, [](double v) { return Place{30, 200 - 20 * std::log(v)}; }),
      Scale(0.5, 10, [](double v) { return Place{30, 200 - 50 * std::log(v)}; }),
      Scale(1, 12, [](double v) { return Place{30, 200 - 30 * std::log(v)}; })};
  for (const Scale& scale : scales) {
    const auto ticks = ticks_of(scale, 7, 1.2);
    CHECK(ticks.front().figure == scale.low());
    CHECK(ticks.back().figure == scale.high());
    double last_named = 0;
    for (std::size_t i = 0; i < ticks.size(); ++i) {
      if (i == 0) continue;
      CHECK(ticks[i].figure > ticks[i - 1].figure);
      const double gap = std::abs(scale.at(ticks[i].figure).y - scale.at(ticks[i - 1].figure).y);
      CHECK(gap >= 1.2 - 1e-9);
      if (ticks[i].kind != TickKind::named) continue;
      // The ends are named whatever room there is.
      const double apart = std::abs(scale.at(ticks[i].figure).y -
                                    scale.at(ticks[static_cast<std::size_t>(last_named)].figure).y);
      if (i + 1 < ticks.size() && last_named > 0) CHECK(apart >= 7 - 1e-9);
      last_named = static_cast<double>(i);
    }
  }
}

TEST_CASE("round figures are ones, twos and fives") {
  CHECK(round_above(0.13) == doctest::Approx(0.2));
  CHECK(round_above(0.2) == doctest::Approx(0.2));
  CHECK(round_above(51) == doctest::Approx(100));
  CHECK(round_below(0.13) == doctest::Approx(0.1));
  CHECK(round_below(51) == doctest::Approx(50));
  CHECK(round_below(0.5) == doctest::Approx(0.5));
}
