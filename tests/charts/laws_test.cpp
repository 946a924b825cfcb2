#include <doctest/doctest.h>

#include <cmath>

#include "core/charts/bake_chart.h"
#include "core/charts/dew_chart.h"
#include "core/charts/fan_chart.h"
#include "core/charts/litres_chart.h"
#include "core/charts/window_chart.h"
#include "core/moist_air/humid_air.h"

// Each chart's ruler against its model, with places to the last digit: what paper and hand add is another matter.

using namespace dampward;
using namespace dampward::charts;

namespace {

constexpr Temperature celsius(double t) {
  return Temperature::celsius(t);
}
constexpr Frame frames[] = {{38, 70, 120, 130}, {20, 40, 170, 90}};

coating::WindowRules varnish() {
  coating::WindowRules rules;
  rules.hottest = celsius(38);
  rules.dew_margin = 3 * kelvin;
  return rules;
}

}  // namespace

TEST_CASE("a ruler through two thermometers meets the model's dew point at any pressure") {
  for (const double pressure : {101325.0, 95461.0, 77000.0}) {
    const DewChart chart{celsius(15), celsius(45), celsius(5), celsius(35), pressure * pascal, varnish()};
    for (const Frame& frame : frames) {
      const DewScales scales = placed(chart, frame);
      int read = 0;
      for (double b = scales.wet.scale.low(); b <= scales.wet.scale.high(); b += 0.9) {
        for (double t = std::max(b, 15.0); t <= 45; t += 1.7) {
          const auto dew = scales.dew.crossed_by(scales.air.at(celsius(t)), scales.wet.at(celsius(b)));
          if (!dew) continue;
          ++read;
          CHECK(std::abs((*dew - dew_point_of(chart, celsius(t), celsius(b))).in(kelvin)) < 1e-8);
        }
      }
      CHECK(read > 100);
    }
  }
}

TEST_CASE("a ruler through humidity and air meets dew point plus margin") {
  const WindowChart chart{celsius(15), celsius(40), RelativeHumidity::percent(40),
                          celsius(10), varnish(),   12 * minute};
  for (const Frame& frame : frames) {
    const WindowScales scales = placed(chart, frame);
    int read = 0;
    for (double h = 40; h <= 100; h += 3.1) {
      for (double t = scales.air.scale.low(); t <= scales.air.scale.high(); t += 1.3) {
        const auto surface = scales.surface.crossed_by(scales.humidity.at(RelativeHumidity::percent(h)),
                                                       scales.air.at(celsius(t)));
        if (!surface) continue;
        ++read;
        CHECK(std::abs((*surface - floor_of(chart, celsius(t), RelativeHumidity::percent(h))).in(kelvin)) <
              1e-6);
      }
    }
    CHECK(read > 100);
  }
}

TEST_CASE(
    "a chart's curves lie on the cold side of the model, by what a hand may be off and no more than a "
    "kelvin") {
  const WindowChart chart{celsius(15), celsius(40), RelativeHumidity::percent(40),
                          celsius(10), varnish(),   12 * minute};
  const WindowScales scales = placed(chart, frames[0]);
  CHECK(scales.safe > 0.1 * kelvin);
  CHECK(scales.safe < 1 * kelvin);
  for (const Duration time : curves_of(chart)) {
    for (double t = 15; t < 37; t += 2) {
      const Temperature at = drawn(chart, scales, time, celsius(t));
      // Newton: 38 °C in air of t after so long.
      const double exact = t + (38 - t) * std::exp(-(time / chart.cooling));
      CHECK(at.celsius() == doctest::Approx(exact - scales.safe.in(kelvin)));
    }
  }
}

TEST_CASE("rulers over hold, litres and fresh air multiply") {
  materials::MoistureDiffusion slow, slower_when_cold;
  slow.diffusivity.value = Range<Diffusivity>(Diffusivity::si(1e-9));
  slow.at = slower_when_cold.at = celsius(71);
  slow.activation_energy.value = Range<MolarEnergy>(20 * kilojoule_per_mole);
  slower_when_cold.diffusivity.value = Range<Diffusivity>(Diffusivity::si(1.2e-9));
  slower_when_cold.activation_energy.value = Range<MolarEnergy>(60 * kilojoule_per_mole);
  // Which of two materials is the slower changes along the scale; the ruler does not mind.
  const BakeChart bake{"",          celsius(50),      celsius(90),     8 * kelvin, 6 * kelvin,
                       15 * kelvin, 0.5 * millimetre, 10 * millimetre, 0.1,        {slow, slower_when_cold}};
  const BakeScales bakes = placed(bake, frames[0]);
  for (double t = 50; t <= 90; t += 3.3) {
    for (double l = 0.6; l <= 10; l *= 1.4) {
      const auto hold = bakes.hold.crossed_by(bakes.set.at(celsius(t)), bakes.thickness.at(l * millimetre));
      if (hold)
        CHECK(hold->in(hour) ==
              doctest::Approx(hold_of(bake, celsius(t), l * millimetre).in(hour)).epsilon(1e-8));
    }
  }
  const auto film = [](double l) { return l * (litre / square_metre); };
  const LitresChart litres{
      {}, {{"gun", {film(0.6), film(1.3), film(3.8)}}, {"brush", {film(0.09), film(0.12), film(0.2)}}}};
  const LitresScales mixes = placed(litres, frames[0]);
  const auto mix =
      mixes.mix.crossed_by(mixes.area.at(0.7 * square_metre), mixes.on_the_surface.at(film(1.3)));
  CHECK(mix->in(litre) == doctest::Approx(0.91));
  FanChart fan;
  fan.least_rate = 0.2 * (litre / hour);
  fan.most_rate = 20 * (litre / hour);
  fan.fire = 600;
  fan.breathe = 30000;
  const FanScales fans = placed(fan, frames[0]);
  const auto people = fans.people.at(3), rate = fans.rate.at(2 * (litre / hour));
  CHECK(fans.fire.crossed_by(people, rate)->in(cubic_metre_per_hour) == doctest::Approx(3.6));
  CHECK(fans.breathe.crossed_by(people, rate)->in(cubic_metre_per_hour) == doctest::Approx(180));
}
