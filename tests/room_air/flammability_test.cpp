#include "core/room_air/flammability.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include "solvents_of_tests.h"

using namespace dampward;
using namespace dampward::room_air;
using doctest::Approx;

namespace {

VapourShare percent(double value) {
  return VapourShare::percent(value);
}

materials::SolventPart part(const char* id, double low, double typical, double high) {
  return {SolventId(id), {MassShare::percent(low), MassShare::percent(typical), MassShare::percent(high)}};
}

}  // namespace

// Crowl and Louvar, Chemical Process Safety, example as printed in an open library's tests (read): lower and upper limit of a mix.
TEST_CASE("the mix of the textbook example burns between 2.75 and 12.9 %") {
  const Combustible lower[] = {{0.0024, VapourShare::fraction(0.012)},
                               {0.0061, VapourShare::fraction(0.053)},
                               {0.0015, VapourShare::fraction(0.031)}};
  const Combustible upper[] = {{0.0024, VapourShare::fraction(0.075)},
                               {0.0061, VapourShare::fraction(0.15)},
                               {0.0015, VapourShare::fraction(0.32)}};
  CHECK(le_chatelier(lower).fraction() == Approx(0.02751172136637642).epsilon(1e-12));
  CHECK(le_chatelier(upper).fraction() == Approx(0.12927551844869378).epsilon(1e-12));
}

// Computed: thinner of 50, 30, 20 % by volume of toluene, butyl acetate, ethanol.
TEST_CASE(
    "a thinner's lower limit differs by a sixth between two published tables, and the lower one is planned") {
  const double toluene = 0.5 * 868.5 / 92.138, acetate = 0.3 * 880.9 / 116.158,
               ethanol = 0.2 * 790.3 / 46.068;
  const Combustible iec[] = {{toluene, percent(1.0)}, {acetate, percent(1.2)}, {ethanol, percent(3.1)}};
  const Combustible nfpa[] = {{toluene, percent(1.1)}, {acetate, percent(1.7)}, {ethanol, percent(3.3)}};
  CHECK(le_chatelier(iec).percent() == Approx(1.350).epsilon(1e-3));
  CHECK(le_chatelier(nfpa).percent() == Approx(1.564).epsilon(1e-3));
  const double whole = 0.5 * 868.5 + 0.3 * 880.9 + 0.2 * 790.3;
  const double t = 100 * 0.5 * 868.5 / whole, b = 100 * 0.3 * 880.9 / whole, e = 100 * 0.2 * 790.3 / whole;
  const materials::SolventPart recipe[] = {part("toluene", t, t, t), part("n_butyl_acetate", b, b, b),
                                           part("ethanol", e, e, e)};
  const auto table = few_solvents();
  const auto mix = evaporated(worst_mixture(recipe, table, Worst::fire));
  REQUIRE(mix);
  CHECK(mix->lower_limit.percent() == Approx(1.350).epsilon(1e-3));
}

// Zabetakis' rule would give 1.0634 % for toluene at 71.1 °C (computed with 0.000721 per K, from memory); the planned rule falls faster.
TEST_CASE("warm air burns with less vapour, and cool air is not credited with more") {
  CHECK(at_temperature(percent(1.1), Temperature::celsius(71.111)).percent() == Approx(1.0602).epsilon(1e-4));
  CHECK(at_temperature(percent(1.1), Temperature::celsius(71.111)).percent() < 1.0634);
  CHECK(at_temperature(percent(1.1), Temperature::celsius(10)) == percent(1.1));
}

TEST_CASE("a mix never burns with less vapour than its worst part nor needs more than its best") {
  CHECK(rc::check([] {
    const double x = *rc::gen::inRange(0, 101), y = *rc::gen::inRange(1, 101);
    const Combustible mix[] = {{x, percent(0.9)}, {y, percent(3.1)}};
    const double limit = le_chatelier(mix).percent();
    RC_ASSERT(limit >= 0.9 - 1e-9);
    RC_ASSERT(limit <= 3.1 + 1e-9);
  }));
}

TEST_CASE("within its ranges a recipe is taken at its worst: the harmful solvents first") {
  const auto table = few_solvents();
  const materials::SolventPart recipe[] = {part("toluene", 20, 40, 60), part("ethanol", 40, 60, 80)};
  const Mixture fire = worst_mixture(recipe, table, Worst::fire);
  REQUIRE(fire.parts.size() == 2);
  CHECK(fire.composition_known);
  for (const VolatilePart& p : fire.parts)
    CHECK(p.share.percent() == Approx(p.solvent.text == "toluene" ? 60 : 40));
  // Any other split within the ranges has a higher lower limit per mass.
  const auto worst = evaporated(fire);
  for (double share : {20.0, 40.0, 59.0}) {
    const materials::SolventPart fixed_recipe[] = {part("toluene", share, share, share),
                                                   part("ethanol", 100 - share, 100 - share, 100 - share)};
    const auto other = evaporated(worst_mixture(fixed_recipe, table, Worst::fire));
    CHECK(worst->vapour_per_kilogram / worst->lower_limit.fraction() >=
          other->vapour_per_kilogram / other->lower_limit.fraction());
  }
}

TEST_CASE("an unknown composition is the worst solvent of the table, and a solvent not in it is too") {
  const auto table = few_solvents();
  const Mixture unknown = worst_mixture({}, table, Worst::fire);
  CHECK(!unknown.composition_known);
  REQUIRE(unknown.parts.size() == 1);
  CHECK(unknown.parts[0].solvent.text == "toluene");  // least mass to reach its limit among these
  CHECK(worst_mixture({}, table, Worst::people).parts[0].solvent.text == "toluene");
  const materials::SolventPart recipe[] = {part("mystery", 100, 100, 100)};
  const Mixture mystery = worst_mixture(recipe, table, Worst::fire);
  CHECK(!mystery.composition_known);
  CHECK(mystery.parts[0].name.find("mystery") == 0);
  CHECK(mystery.parts[0].assumed);
}

TEST_CASE(
    "a solvent without a published lower limit gets the lowest of the table, and one without exposure limit "
    "is told") {
  auto table = few_solvents();
  table[3].lower_flammable_limit.reset();
  table[3].limits.clear();
  const materials::SolventPart recipe[] = {part("ethanol", 100, 100, 100)};
  const Mixture mix = worst_mixture(recipe, table, Worst::fire);
  CHECK(mix.parts[0].assumed);
  CHECK(mix.parts[0].lower_limit.percent() == Approx(0.9));
  CHECK(!mix.people_known);
}

TEST_CASE("water makes no vapour to count and a water-borne liquid is not shared out among its solvents") {
  const auto table = few_solvents();
  const materials::SolventPart recipe[] = {part("water", 90, 90, 90), part("ethanol", 10, 10, 10)};
  const Mixture mix = worst_mixture(recipe, table, Worst::fire);
  REQUIRE(mix.parts.size() == 1);
  CHECK(mix.parts[0].share.percent() == Approx(10));
  const materials::SolventPart water[] = {part("water", 100, 100, 100)};
  CHECK(!evaporated(worst_mixture(water, table, Worst::fire)));
}

TEST_CASE("lacquer and thinner blend by the mass of what evaporates") {
  const auto table = few_solvents();
  const materials::SolventPart xylene[] = {part("xylene", 100, 100, 100)};
  const materials::SolventPart half[] = {part("xylene", 50, 50, 50), part("ethanol", 50, 50, 50)};
  const VolatileShare liquids[] = {{worst_mixture(xylene, table, Worst::fire), 1},
                                   {worst_mixture(half, table, Worst::fire), 3}};
  const Mixture blend = blended(liquids);
  REQUIRE(blend.parts.size() == 2);
  CHECK(blend.parts[0].solvent.text == "xylene");
  CHECK(blend.parts[0].share.percent() == Approx(62.5));
  CHECK(blend.parts[1].share.percent() == Approx(37.5));
}
