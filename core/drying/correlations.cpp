#include "core/drying/correlations.h"

#include <cmath>

namespace dampward::drying {
namespace {

constexpr double gravity = 9.80665;                  // m/s²
constexpr double dry_air_gas_constant = 287.05;      // J/(kg K)
constexpr double dry_air_heat = 1007;                // J/(kg K)
constexpr double stefan_boltzmann = 5.670374419e-8;  // W/(m² K⁴)

Temperature mean(Temperature a, Temperature b) {
  return a + 0.5 * (b - a);
}

HeatTransferCoefficient coefficient(double nusselt, const AirLayer& air, Length length) {
  return nusselt * air.conductivity / length;
}

}  // namespace

AirLayer air_layer(Temperature film, Pressure pressure) {
  const double t = film.kelvins();
  const double dynamic = 1.458e-6 * std::pow(t, 1.5) / (t + 110.4);
  const double conductivity = 2.64638e-3 * std::pow(t, 1.5) / (t + 245.4 * std::pow(10, -12 / t));
  const double density = pressure.si() / (dry_air_gas_constant * t);
  return {.viscosity = KinematicViscosity::si(dynamic / density),
          .conductivity = ThermalConductivity::si(conductivity),
          .prandtl = dynamic * dry_air_heat / conductivity};
}

double vertical_plate_nusselt(double rayleigh, double prandtl) {
  const double slowed = std::pow(1 + std::pow(0.492 / prandtl, 9.0 / 16), 8.0 / 27);
  return std::pow(0.825 + 0.387 * std::pow(rayleigh, 1.0 / 6) / slowed, 2);
}

double forced_plate_nusselt(double reynolds, double prandtl) {
  return 0.6774 * std::cbrt(prandtl) * std::sqrt(reynolds) /
         std::pow(1 + std::pow(0.0468 / prandtl, 2.0 / 3), 0.25);
}

HeatTransferCoefficient natural_convection(Temperature surface, Temperature air, Length height,
                                           Pressure pressure) {
  const Temperature film = mean(surface, air);
  const AirLayer layer = air_layer(film, pressure);
  const double viscosity = layer.viscosity.si();
  const double grashof = gravity / film.kelvins() * std::abs((surface - air).si()) *
                         std::pow(height.si(), 3) / (viscosity * viscosity);
  return coefficient(vertical_plate_nusselt(grashof * layer.prandtl, layer.prandtl), layer, height);
}

HeatTransferCoefficient forced_convection(Temperature surface, Temperature air, Speed speed, Length length,
                                          Pressure pressure) {
  const AirLayer layer = air_layer(mean(surface, air), pressure);
  const double reynolds = speed.si() * length.si() / layer.viscosity.si();
  return coefficient(forced_plate_nusselt(reynolds, layer.prandtl), layer, length);
}

HeatTransferCoefficient radiation_coefficient(double emissivity, Temperature surface, Temperature walls) {
  const double a = surface.kelvins(), b = walls.kelvins();
  return HeatTransferCoefficient::si(emissivity * stefan_boltzmann * (a + b) * (a * a + b * b));
}

}  // namespace dampward::drying
