#include "core/room_air/vapour.h"

namespace dampward::room_air {
namespace {

constexpr double gas_constant = 8.314462618;  // J/(mol K)

// Moles of any gas in a cubic metre.
double moles_per_cubic_metre(AirState air) {
  return air.pressure.si() / (gas_constant * air.temperature.kelvins());
}

}  // namespace

Density mass_in_air(VapourShare share, MolarMass molar_mass, AirState air) {
  return Density::si(share.fraction() * moles_per_cubic_metre(air) * molar_mass.si());
}

VapourShare share_in_air(Density mass, MolarMass molar_mass, AirState air) {
  return VapourShare::fraction(mass.si() / (moles_per_cubic_metre(air) * molar_mass.si()));
}

Volume vapour_volume(Mass evaporated, MolarMass molar_mass, AirState air) {
  return Volume::si(evaporated.si() / molar_mass.si() / moles_per_cubic_metre(air));
}

Volume vapour_volume(Volume liquid, Density density, MolarMass molar_mass, AirState air) {
  return vapour_volume(liquid * density, molar_mass, air);
}

}  // namespace dampward::room_air
