#include "core/coating/mixing.h"

#include <doctest/doctest.h>

#include "lacquer_of_tests.h"

using namespace dampward;
using namespace dampward::coating;
using doctest::Approx;

// Arithmetic on the published minimum of 50 % (TO 1-1-700 par. 6.4, read).
TEST_CASE(
    "varnish of 55, 60 and 65 % takes a tenth, two and three tenths of its mass in thinner before it falls "
    "below half") {
  CHECK(most_thinner_by_mass(MassShare::percent(55), published_least_solids) == Approx(0.10));
  CHECK(most_thinner_by_mass(MassShare::percent(60), published_least_solids) == Approx(0.20));
  CHECK(most_thinner_by_mass(MassShare::percent(65), published_least_solids) == Approx(0.30));
}

TEST_CASE("the most thinner by volume brings the mix to the minimum exactly") {
  const Density lacquer = 0.92 * kilogram_per_litre, thinner = 0.82 * kilogram_per_litre;
  const double parts = most_thinner_parts(MassShare::percent(60), lacquer, thinner, published_least_solids);
  CHECK(non_volatile(MassShare::percent(60), lacquer, thinner, parts).typical.percent() == Approx(50));
  CHECK(most_thinner_parts(MassShare::percent(40), lacquer, thinner, published_least_solids) == 0);
}

// Trade fact: two parts lacquer to one of thinner for spraying. Common practice, no source. It disagrees with the published
// minimum of 50 % non-volatile (TO 1-1-700, read), and both are told.
TEST_CASE(
    "two parts to one leaves a varnish near 40 % where a manual asks for half, and both views are given") {
  const ThinningViews views =
      thinning_views(phenolic_varnish(), Density(0.82 * kilogram_per_litre), trade_thinner_parts);
  CHECK(views.non_volatile.typical.percent() == Approx(38).epsilon(0.02));
  CHECK(views.non_volatile.high.percent() < 50);
  CHECK(views.disagree);
  CHECK(views.parts_within_published == Approx(0.112).epsilon(0.01));
  CHECK(views.view.find("38 %") != std::string::npos);
  CHECK(views.view.find("50 %") != std::string::npos);
}

// Trade fact: unthinned for the brush. Common practice, no source. It agrees with the minimum.
TEST_CASE("unthinned for the brush a varnish keeps the published minimum") {
  const ThinningViews views = thinning_views(phenolic_varnish(), Density(0.82 * kilogram_per_litre), 0);
  CHECK(!views.disagree);
  CHECK(views.non_volatile.typical.percent() == Approx(55));
}

TEST_CASE("three litres of a two to one mix are two of lacquer and one of thinner") {
  const Mix mix = mix_for(3 * litre, trade_thinner_parts);
  CHECK(mix.lacquer.in(litre) == Approx(2));
  CHECK(mix.thinner.in(litre) == Approx(1));
}
