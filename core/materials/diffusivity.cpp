#include "core/materials/diffusivity.h"

#include <cmath>

namespace dampward::materials {
namespace {

Diffusivity carried(Diffusivity known, MolarEnergy energy, double inverse_kelvins_apart) {
  constexpr double gas_constant = 8.314462618;  // J/(mol K)
  return known * std::exp(-energy.si() / gas_constant * inverse_kelvins_apart);
}

}  // namespace

Range<Diffusivity> diffusivity(const MoistureDiffusion& diffusion, Temperature temperature) {
  const Range<Diffusivity>& known = diffusion.diffusivity.value;
  const Range<MolarEnergy>& energy = diffusion.activation_energy.value;
  const double apart = 1 / temperature.kelvins() - 1 / diffusion.at.kelvins();
  const bool warmer = apart < 0;
  return {carried(known.low, warmer ? energy.low : energy.high, apart),
          carried(known.typical, energy.typical, apart),
          carried(known.high, warmer ? energy.high : energy.low, apart)};
}

Figure<MolarEnergy> unmeasured_activation_energy() {
  return {{30 * kilojoule_per_mole, 43 * kilojoule_per_mole, 50 * kilojoule_per_mole},
          Mark::estimate,
          "MAT_JSTD033",
          "weigh a piece through a bake at two temperatures"};
}

}  // namespace dampward::materials
