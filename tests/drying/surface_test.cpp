#include "core/drying/surface_drying.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <cmath>

#include "sample.h"

using namespace dampward;
using namespace dampward::drying;

TEST_CASE("a millimetre of water at 40 °C leaves into 71 °C air in 0.6 h") {
  // Regression values: h 15 W/(m² K) gives hm 0.015611 m/s; 1.6696 kg/(m² h) into air with 3397 Pa of vapour.
  const Speed hm = mass_transfer_coefficient(15 * watt_per_square_metre_kelvin);
  CHECK(hm.si() == doctest::Approx(0.015611).epsilon(1e-3));
  const auto oven = moist_air::from_vapour_pressure(Temperature::celsius(71.1), 3397 * pascal,
                                                    moist_air::sea_level_pressure);
  const DepositionRate flux = evaporation(Temperature::celsius(40), oven, hm);
  CHECK((flux / (kilogram / square_metre / hour)) == doctest::Approx(1.6696).epsilon(2e-3));
}

TEST_CASE("in well-aired oven air a wet surface sits at the wet bulb, far below the oven") {
  // 30 °C 80 % air heated to 71.1 °C: thermodynamic wet bulb 35.24 °C (regression value). The Lewis analogy
  // on vapour densities falls 2 K below, which is 5 % in time, against a film thickness known within a factor
  // of five.
  const WetLoad wet{square_metre, 15 * watt_per_square_metre_kelvin};
  const Plateau plateau =
      dry_off(wet, 50 * micrometre, Temperature::celsius(71.1), sample::shop_air(), well_aired);
  CHECK(std::abs(plateau.surface.celsius() - 35.24) < 2);
  CHECK(plateau.water.in(gram) == doctest::Approx(50));
}

TEST_CASE(
    "a wet surface in air of its own temperature and full humidity does not dry, and never gains here") {
  const moist_air::HumidAir full = sample::shop_air(30, 100);
  CHECK(evaporation(Temperature::celsius(25), full, 0.01 * metre_per_second) == DepositionRate{});
}

TEST_CASE("less fresh air makes the surface hotter and the drying slower, never quicker") {
  rc::check([] {
    const double flow = *rc::gen::inRange(1, 1000) / 60000.0, less = *rc::gen::inRange(1, 100) / 100.0;
    const WetLoad wet{4 * square_metre, 6 * watt_per_square_metre_kelvin};
    const auto at = [&](double cubic_metres_per_second) {
      return dry_off(wet, 50 * micrometre, Temperature::celsius(65), sample::shop_air(),
                     VolumeFlow::si(cubic_metres_per_second));
    };
    const Plateau aired = at(flow), shut = at(flow * less);
    RC_ASSERT(shut.time >= aired.time);
    RC_ASSERT(shut.surface >= aired.surface);
  });
}

TEST_CASE("with hardly any fresh air the vapour goes out as fast as the vent carries it") {
  // The closed form of that end: rate = Q (ρ_sat(T) − ρ_in) with the surface at the oven's own temperature.
  const WetLoad wet{1000 * square_metre, 6 * watt_per_square_metre_kelvin};
  const VolumeFlow flow = 1 * litre_per_minute;
  const Plateau plateau = dry_off(wet, micrometre, Temperature::celsius(60), sample::shop_air(), flow);
  const moist_air::HumidAir full{Temperature::celsius(60), RelativeHumidity::fraction(1)};
  const Density gain = moist_air::vapour_density(full) - moist_air::vapour_density(moist_air::brought_to(
                                                             sample::shop_air(), Temperature::celsius(60)));
  CHECK((plateau.water / (flow * gain)) / plateau.time == doctest::Approx(1).epsilon(0.01));
}

TEST_CASE("evaporating water takes the heat the steam table says") {
  // Steam table, from memory: 2501, 2406.7, 2333.8 kJ/kg at 0, 40, 70 °C.
  CHECK(evaporation_heat(Temperature::celsius(0)).si() == doctest::Approx(2501e3));
  CHECK(evaporation_heat(Temperature::celsius(40)).si() == doctest::Approx(2406.7e3).epsilon(1e-3));
  CHECK(evaporation_heat(Temperature::celsius(70)).si() == doctest::Approx(2333.8e3).epsilon(2e-3));
}
