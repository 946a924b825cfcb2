#include "core/coating/mix_gate.h"

#include <doctest/doctest.h>

#include "core/coating/film.h"
#include "lacquer_of_tests.h"

using namespace dampward;
using namespace dampward::coating;
using doctest::Approx;
using materials::Method;

namespace {

const Range<TransferEfficiency> cup_gun{TransferEfficiency::fraction(0.05),
                                        TransferEfficiency::fraction(0.10),
                                        TransferEfficiency::fraction(0.15)};

Consumption varnish_by(Method method) {
  return consumption(Area::si(0.4), phenolic_varnish(), Density(0.86 * kilogram_per_litre), {method, cup_gun})
      .value();
}

}  // namespace

// The arithmetic of every paint data sheet: m²/L = 10 · volume solids % / dry film µm.
TEST_CASE("a litre covers ten times its volume solids in per cent, divided by the film in micrometres") {
  const struct {
    double solids_pct, film_um, square_metres;
  } rows[] = {{40, 50, 8}, {50, 50, 10}, {60, 75, 8}, {100, 25.4, 39.37}, {30, 60, 5}};
  for (const auto& row : rows) {
    const Spread covered = spread(row.film_um * micrometre, VolumeShare::percent(row.solids_pct));
    CHECK(covered.in(square_metre_per_litre) == Approx(row.square_metres).epsilon(1e-3));
  }
}

TEST_CASE("the coats of a mix add up to the film that is wanted, wet and dry") {
  for (const Method method : {Method::hand_gun, Method::power_gun, Method::brush}) {
    const Consumption use = varnish_by(method);
    CHECK((use.coats * use.dry_coat.typical).in(micrometre) == Approx(60));
    CHECK(dry_film(use.wet_coat.typical, use.solids.typical).in(micrometre) ==
          Approx(use.dry_coat.typical.in(micrometre)));
  }
  CHECK(varnish_by(Method::hand_gun).coats == 3);
  CHECK(varnish_by(Method::power_gun).coats == 2);
}

TEST_CASE("litres read backwards give the film they were reckoned from") {
  const Consumption use = varnish_by(Method::hand_gun);
  const auto built = film_from(use.ready.typical, Area::si(0.4), use.solids, cup_gun);
  CHECK(built.typical.in(micrometre) == Approx(60));
  CHECK(built.low < built.typical);
  CHECK(built.typical < built.high);
}

TEST_CASE("a mix nobody measured has not passed") {
  CHECK_FALSE(judge_mix(varnish_by(Method::hand_gun), Method::hand_gun, {}).passed());
  CHECK_FALSE(judge_mix(varnish_by(Method::brush), Method::brush, {}).passed());
}

// 60 mm²/s drain from a Ford 4 cup in 20.1 s: a cup maker's table after ASTM D1200.
TEST_CASE("a mix passes by the cup and by the comb, whatever its share of solids") {
  const Consumption use = varnish_by(Method::hand_gun);
  const FlowCup* ford = find_cup("ford_4");
  REQUIRE(ford != nullptr);
  const Length enough = 1.01 * use.film.low / (use.coats * use.solids.low.fraction());
  CHECK(judge_mix(use, Method::hand_gun, {ford, 22 * second, enough}).passed());
  CHECK(judge_mix(use, Method::hand_gun, {ford, 40 * second, enough}).viscosity ==
        MixGate::Viscosity::too_thick);
  CHECK(judge_mix(use, Method::hand_gun, {ford, 12 * second, enough}).viscosity ==
        MixGate::Viscosity::outside_the_cup);
  CHECK(judge_mix(use, Method::hand_gun, {ford, 22 * second, 0.9 * enough}).film == MixGate::Film::too_thin);
  CHECK(judge_mix(use, Method::brush, {nullptr, std::nullopt, enough}).passed() ==
        (judge_mix(use, Method::brush, {nullptr, std::nullopt, enough}).film == MixGate::Film::fits));
}
