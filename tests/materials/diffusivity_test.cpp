#include "core/materials/diffusivity.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

using namespace dampward;
using namespace dampward::materials;

namespace {

MoistureDiffusion moulded_epoxy(Range<MolarEnergy> energy) {
  return {{3.8e-13 * square_metre_per_second, Mark::read, "MAT_TUD", ""},
          Temperature::celsius(20),
          {energy, Mark::computed, "MAT_TUD", ""}};
}

}  // namespace

TEST_CASE("moulded epoxy known at 20 °C comes out at 85 °C as it was measured there") {
  // 3.8e-7 mm²/s at 20 °C and 3.6e-6 mm²/s at 85 °C (TU Delft record 40be966e, abstract read); 30.2 kJ/mol is computed from
  // the two, so this checks the arithmetic, not the law. Two digits are printed: 1.5 % each.
  const auto at_85 = diffusivity(moulded_epoxy({30.2 * kilojoule_per_mole}), Temperature::celsius(85));
  CHECK(at_85.typical.si() == doctest::Approx(3.6e-12).epsilon(0.03));
}

TEST_CASE("43 kJ/mol carries a moulded package's bake from 125 °C to 90 and 40 °C within a fifth") {
  // J-STD-033 bake times for bodies of 1.4 to 2.0 mm, "saturated at 30 °C/85 %" (eesemi.com/baketables.htm, read): 27 h at
  // 125 °C, 96 h at 90 °C, 37 days at 40 °C. Times go as 1/D. Whole days are printed and the energy fits nine rows at once.
  MoistureDiffusion package = moulded_epoxy({43 * kilojoule_per_mole});
  package.at = Temperature::celsius(125);
  const auto slower = [&](double celsius) {
    return diffusivity(package, package.at)
        .typical.in(diffusivity(package, Temperature::celsius(celsius)).typical);
  };
  CHECK(27 * slower(90) == doctest::Approx(96).epsilon(0.2));
  CHECK(27 * slower(40) / 24 == doctest::Approx(37).epsilon(0.2));
}

TEST_CASE("at the temperature where it is known nothing is added to the range") {
  MoistureDiffusion diffusion = moulded_epoxy(unmeasured_activation_energy().value);
  diffusion.diffusivity.value = {1e-12 * square_metre_per_second, 2e-12 * square_metre_per_second,
                                 4e-12 * square_metre_per_second};
  CHECK(diffusivity(diffusion, diffusion.at) == diffusion.diffusivity.value);
}

TEST_CASE("away from the known temperature the range stays in order and widens") {
  rc::check([] {
    const MoistureDiffusion diffusion = moulded_epoxy(unmeasured_activation_energy().value);
    const double nearer = *rc::gen::inRange(1, 60), farther = nearer + *rc::gen::inRange(1, 20);
    const double side = *rc::gen::element(-1.0, 1.0);
    const auto spread = [&](double steps) {
      const auto range = diffusivity(diffusion, diffusion.at + side * steps * kelvin);
      RC_ASSERT(range.ordered());
      return range.high.in(range.low);
    };
    RC_ASSERT(spread(farther) > spread(nearer));
  });
}

TEST_CASE("warmer is quicker") {
  const MoistureDiffusion diffusion = moulded_epoxy(unmeasured_activation_energy().value);
  CHECK(diffusivity(diffusion, Temperature::celsius(71)).low >
        diffusivity(diffusion, Temperature::celsius(50)).low);
}

TEST_CASE("an activation energy nobody measured says so and how to settle it") {
  const Figure<MolarEnergy> energy = unmeasured_activation_energy();
  CHECK(energy.mark == Mark::estimate);
  CHECK_FALSE(energy.settle.empty());
  CHECK(energy.value.low == 30 * kilojoule_per_mole);
  CHECK(energy.value.high == 50 * kilojoule_per_mole);
}
