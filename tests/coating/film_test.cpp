#include "core/coating/film.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

using namespace dampward;
using namespace dampward::coating;
using doctest::Approx;

namespace {

VolumeShare solids(double share) {
  return VolumeShare::fraction(share);
}
TransferEfficiency landing(double share) {
  return TransferEfficiency::fraction(share);
}

}  // namespace

// MIL-HDBK-1110 (read): dry film is wet film times volume solids, after thinning with the new solids.
TEST_CASE(
    "a wet film of 100 µm with 30 % solids dries to 30 µm, and 50 µm dry need 250 µm wet once thinned two to "
    "one") {
  CHECK(dry_film(100 * micrometre, solids(0.30)).in(micrometre) == Approx(30));
  const auto thin = thinned(solids(0.30), 0.5);
  CHECK(thin.typical.fraction() == Approx(0.20));
  CHECK(wet_film(50 * micrometre, thin.typical).in(micrometre) == Approx(250));
}

// MIL-HDBK-1110 (read) prints 1600 square feet from a gallon of pure solids at 1 mil; a US gallon of 231 cubic inches gives 1604.
TEST_CASE("a gallon of pure solids covers about 1600 square feet at one mil") {
  CHECK(spread(1 * mil, solids(1)) / (square_foot / us_gallon) == Approx(1604.17).epsilon(1e-5));
  CHECK(spread(2 * mil, solids(0.30)) / (square_foot / us_gallon) == Approx(240.6).epsilon(1e-3));
  CHECK(spread(2 * mil, solids(0.30)) / square_metre_per_litre == Approx(5.905).epsilon(1e-3));
}

// Arithmetic on the equations above.
TEST_CASE("a litre spreads less far when thinned, and far less when most of it misses a small chassis") {
  CHECK(spread(50 * micrometre, solids(0.30)) / square_metre_per_litre == Approx(6.0));
  CHECK(spread(50 * micrometre, solids(0.20)) / square_metre_per_litre == Approx(4.0));
  const Range<Volume> used = litres(Area(0.8 * square_metre), 50 * micrometre, solids(0.20), landing(0.30));
  CHECK(used.typical.in(litre) == Approx(0.6667).epsilon(1e-4));
  CHECK((1 - 0.20) * used.typical.in(litre) == Approx(0.5333).epsilon(1e-4));
}

// Mass balance: 50 % solids by mass at 0.95 kg/L with solvent of 0.867 kg/L.
TEST_CASE("half the mass of a varnish is 45 % of its volume") {
  const auto share = volume_solids(MassShare::percent(50), Density(0.95 * kilogram_per_litre),
                                   Density(0.867 * kilogram_per_litre));
  CHECK(share.typical.fraction() == Approx(0.4521).epsilon(1e-4));
}

// SSPC Paint 27 (abstract read): about 10 % by volume. The three rounded figures of the family contradict each other, which
// ideal mixing alone would turn into next to nothing.
TEST_CASE("figures that contradict each other never make solids vanish nor outweigh their mass") {
  const auto share =
      volume_solids({MassShare::percent(8), MassShare::percent(12), MassShare::percent(20)},
                    {0.85 * kilogram_per_litre, 0.90 * kilogram_per_litre, 0.95 * kilogram_per_litre},
                    Density(0.795 * kilogram_per_litre));
  CHECK(share.low.fraction() > 0.03);
  CHECK(share.low <= share.typical);
  CHECK(share.typical <= share.high);
  CHECK(share.high.fraction() == Approx(0.10).epsilon(0.06));  // on the safe side of the published figure
}

TEST_CASE(
    "litres to have ready come from the poorest solids and the worst gun, and the ends keep their order") {
  const Range<Volume> used =
      litres({0.4 * square_metre, 0.5 * square_metre, 0.7 * square_metre},
             {50.8 * micrometre, 60 * micrometre, 75 * micrometre},
             {solids(0.25), solids(0.30), solids(0.35)}, {landing(0.05), landing(0.10), landing(0.15)});
  CHECK(used.high.in(litre) == Approx(0.7 * 75e-3 / (0.25 * 0.05)));
  CHECK(used.low.in(litre) == Approx(0.4 * 50.8e-3 / (0.35 * 0.15)));
  CHECK(used.ordered());
}

TEST_CASE("litres grow with area and with film, and shrink with solids and with what lands") {
  rc::check([] {
    const double area = *rc::gen::inRange(1, 500) / 100.0, more = *rc::gen::inRange(1, 300) / 100.0;
    const double film = *rc::gen::inRange(10, 150), vs = *rc::gen::inRange(10, 60) / 100.0;
    const double te = *rc::gen::inRange(5, 90) / 100.0;
    const auto of = [](double a, double f, double v, double t) {
      return litres(Area(a * square_metre), Length(f * micrometre), solids(v), landing(t)).typical;
    };
    RC_ASSERT(of(area + more, film, vs, te) > of(area, film, vs, te));
    RC_ASSERT(of(area, film + 5, vs, te) > of(area, film, vs, te));
    RC_ASSERT(of(area, film, vs + 0.05, te) < of(area, film, vs, te));
    RC_ASSERT(of(area, film, vs, te + 0.05) < of(area, film, vs, te));
  });
}

TEST_CASE("coats build film, and enough coats are those that reach it even when each is thin") {
  const Range<Length> built =
      film_built(3, {60 * micrometre, 80 * micrometre, 100 * micrometre}, solids(0.25));
  CHECK(built.low.in(micrometre) == Approx(45));
  CHECK(built.high.in(micrometre) == Approx(75));
  CHECK(coats_needed(50.8 * micrometre, {20 * micrometre, 25 * micrometre, 30 * micrometre}) == 3);
  CHECK(coats_needed(60 * micrometre, Length(20 * micrometre)) == 3);
  CHECK(coats_needed(5 * micrometre, Length(20 * micrometre)) == 1);
}
