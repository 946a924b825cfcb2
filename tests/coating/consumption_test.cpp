#include "core/coating/consumption.h"

#include <doctest/doctest.h>

#include "lacquer_of_tests.h"

using namespace dampward;
using namespace dampward::coating;
using doctest::Approx;
using materials::Method;

namespace {

constexpr Range<Area> chassis{0.4 * square_metre, 0.5 * square_metre, 0.6 * square_metre};
constexpr Range<TransferEfficiency> small_parts{TransferEfficiency::fraction(0.05),
                                                TransferEfficiency::fraction(0.10),
                                                TransferEfficiency::fraction(0.15)};
constexpr Density solvent = 0.82 * kilogram_per_litre;

}  // namespace

TEST_CASE("spraying a small chassis takes many times the lacquer of brushing it") {
  const auto gun = consumption(chassis, phenolic_varnish(), solvent, {Method::hand_gun, small_parts});
  const auto brush = consumption(chassis, phenolic_varnish(), solvent, {Method::brush, brush_efficiency});
  REQUIRE(gun);
  REQUIRE(brush);
  CHECK(gun->lacquer.typical > 8 * brush->lacquer.typical);
  CHECK(gun->coats == 3);
  CHECK(brush->coats == 2);
}

// Trade fact: thinned two to one for the gun, unthinned for the brush. Common practice, no source.
TEST_CASE("the gun's mix is a third thinner, the brush takes none") {
  const auto gun = consumption(chassis, phenolic_varnish(), solvent, {Method::power_gun, small_parts});
  const auto brush = consumption(chassis, phenolic_varnish(), solvent, {Method::brush, brush_efficiency});
  CHECK(gun->thinner.typical / gun->ready.typical == Approx(1.0 / 3));
  CHECK(gun->lacquer.typical.in(litre) + gun->thinner.typical.in(litre) ==
        Approx(gun->ready.typical.in(litre)));
  CHECK(brush->thinner.high == Volume{});
}

TEST_CASE(
    "thinning changes how much is sprayed and how much solvent flies, not how much lacquer a film takes") {
  materials::Lacquer unthinned = phenolic_varnish();
  unthinned.thinner_parts_for_spray = 0;
  const auto mixed = consumption(chassis, phenolic_varnish(), solvent, {Method::hand_gun, small_parts});
  const auto neat = consumption(chassis, unthinned, solvent, {Method::hand_gun, small_parts});
  CHECK(mixed->lacquer.typical.in(litre) == Approx(neat->lacquer.typical.in(litre)));
  CHECK(mixed->solvent.typical > neat->solvent.typical);
}

TEST_CASE("every range of a consumption keeps its order, and solvent never exceeds what was sprayed") {
  const auto use = consumption(chassis, phenolic_varnish(),
                               {0.78 * kilogram_per_litre, solvent, 0.87 * kilogram_per_litre},
                               {Method::hand_gun, small_parts});
  for (const Range<Volume>& r : {use->ready, use->lacquer, use->thinner, use->solvent}) CHECK(r.ordered());
  CHECK(use->solvent.high < use->ready.high);
}

TEST_CASE("a lacquer not meant for the gun gives no spraying figures") {
  materials::Lacquer shellac = phenolic_varnish();
  shellac.coats = {{Method::brush, 3, Duration(90 * minute)}};
  CHECK(!consumption(chassis, shellac, solvent, {Method::hand_gun, small_parts}));
  CHECK(consumption(chassis, shellac, solvent, {Method::brush, brush_efficiency}));
}
