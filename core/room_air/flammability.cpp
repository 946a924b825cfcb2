#include "core/room_air/flammability.h"

#include <algorithm>
#include <vector>

#include "core/base/promise.h"

namespace dampward::room_air {

VapourShare le_chatelier(std::span<const Combustible> mix) {
  double whole = 0, sum = 0;
  for (const Combustible& part : mix) {
    DAMPWARD_PROMISE(part.limit.fraction() > 0, "a flammable limit lies above zero");
    whole += part.amount;
    sum += part.amount / part.limit.fraction();
  }
  DAMPWARD_PROMISE(whole > 0, "a flammable mix holds a combustible");
  return VapourShare::fraction(whole / sum);
}

VapourShare at_temperature(VapourShare limit_at_25, Temperature air) {
  const double warmer = std::max(0.0, air.celsius() - 25);
  return VapourShare::fraction(limit_at_25.fraction() * std::max(0.0, 1 - 0.000784 * warmer));
}

std::optional<EvaporatedMix> evaporated(const Mixture& mixture, AirState air) {
  std::vector<Combustible> mix;
  double mass = 0, moles = 0;
  Volume vapour;
  for (const VolatilePart& part : mixture.parts) {
    if (!(part.share.fraction() > 0)) continue;
    const Mass of_a_kilogram = part.share.fraction() * kilogram;
    mix.push_back({part.share.fraction() / part.molar_mass.si(), part.lower_limit});
    mass += of_a_kilogram.si();
    moles += mix.back().amount;
    vapour += vapour_volume(of_a_kilogram, part.molar_mass, air);
  }
  if (mix.empty()) return std::nullopt;
  return EvaporatedMix{vapour, at_temperature(le_chatelier(mix), air.temperature),
                       MolarMass::si(mass / moles)};
}

}  // namespace dampward::room_air
