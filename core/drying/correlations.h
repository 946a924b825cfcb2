#pragma once

#include "core/moist_air/atmosphere.h"
#include "core/quantity/quantity.h"
#include "core/quantity/temperature.h"

namespace dampward::drying {

// What a layer of dry air does with heat. Moisture changes these by under 2 % in the air of a drying oven.
struct AirLayer {
  KinematicViscosity viscosity;
  ThermalConductivity conductivity;
  double prandtl = 0.7;
};

// The dry air of a layer at its mean temperature.
//   μ = 1.458e-6 T^1.5/(T + 110.4) Pa s,  ν = μ/ρ,  ρ = p/(287.05 T)
//   k = 2.64638e-3 T^1.5/(T + 245.4 · 10^(-12/T)) W/(m K)
// Source: US Standard Atmosphere 1976 eq. 51 and 53 (read in public code that quotes them). Prandtl with cp
// 1007 J/(kg K).
AirLayer air_layer(Temperature film, Pressure pressure = moist_air::sea_level_pressure);

// Mean Nusselt number of a vertical plate in still air.
//   Nu = (0.825 + 0.387 Ra^(1/6) / (1 + (0.492/Pr)^(9/16))^(8/27))²
// Source: Churchill and Chu 1975, Int. J. Heat Mass Transfer 18:1323 eq. 9. Holds for Ra below 1e12. Ra
// is Gr · Pr: a Grashof number put here reads 12 % high in air.
double vertical_plate_nusselt(double rayleigh, double prandtl);

// Mean Nusselt number of a flat plate in an even stream.
//   Nu = 0.6774 Pr^(1/3) Re^(1/2) / (1 + (0.0468/Pr)^(2/3))^(1/4)
// Source: Churchill and Ozoe 1973, J. Heat Transfer 95:416. Holds for laminar flow, Re below about 5e5.
double forced_plate_nusselt(double reynolds, double prandtl);

// Heat transfer between still air and an upright surface of this height.
HeatTransferCoefficient natural_convection(Temperature surface, Temperature air, Length height,
                                           Pressure pressure = moist_air::sea_level_pressure);

// Heat transfer between a stream and a flat surface of this length.
HeatTransferCoefficient forced_convection(Temperature surface, Temperature air, Speed speed, Length length,
                                          Pressure pressure = moist_air::sea_level_pressure);

// Radiation between a small body and the walls around it, as a coefficient.
//   h = ε σ (Ts + Tw)(Ts² + Tw²)   T in K
// Source: Stefan-Boltzmann law; σ from CODATA 2018. Emissivity 0 to 1.
HeatTransferCoefficient radiation_coefficient(double emissivity, Temperature surface, Temperature walls);

}  // namespace dampward::drying
