#pragma once

#include "core/moist_air/humid_air.h"
#include "core/quantity/quantity.h"
#include "core/quantity/range.h"

namespace dampward::drying {

using SpecificLatentHeat = Quantity<0, 2, -2>;  // J/kg

// Water left on a wiped or blown-off surface, and in a seam, socket or screw hole that traps it, as an even
// film. Estimates: weigh a unit after wiping and after drying.
inline constexpr Range<Length> wiped_film = {20 * micrometre, 50 * micrometre, 100 * micrometre};
inline constexpr Range<Length> trapped_film = {100 * micrometre, 200 * micrometre, 500 * micrometre};

// hm = h/(ρ cp Le^(2/3)), Le = 0.865 for water vapour in air, ρ 1.05 kg/m³ and cp 1008 J/(kg K) near 60 °C.
// Source: Lewis analogy, Incropera and DeWitt ch. 6 (from memory). `convection` without radiation.
Speed mass_transfer_coefficient(HeatTransferCoefficient convection);

// The convective part of heat transfer at a unit's surface in an oven at this temperature, 20 K colder than
// the air.
HeatTransferCoefficient surface_convection(Length flow_length, bool air_moves, Temperature oven_air);

// Heat that turns a kilogram of water at this temperature to vapour:  2501 − 2.36 t kJ/kg, a line through the
// steam table's 0 and 60 °C (2501 and 2358 kJ/kg, from memory).
SpecificLatentHeat evaporation_heat(Temperature water);

// So much fresh air that only the surface holds the water back.
inline constexpr VolumeFlow well_aired = VolumeFlow::si(1e6);

// Water that leaves a wet surface at this temperature; never below zero.
//   hm (ρ_saturated(surface) − ρ_vapour(air))
DepositionRate evaporation(Temperature surface, const moist_air::HumidAir& air, Speed mass_transfer);

// A wet load in an oven whose fresh air carries the vapour off.
struct WetLoad {
  Area area;                           // all wet surface together
  HeatTransferCoefficient convection;  // at that surface
};

// The time at the wet bulb: while a surface is wet it stays far below the oven's temperature.
struct Plateau {
  Temperature surface;
  Mass water;
  Duration time;
};

// Film dried off by air of the oven's temperature that came in as `intake` (shop air), with two brakes in
// series: the step from surface to oven air, and the step from oven air to outside with the fresh air. Solves
// for the surface temperature
//   h A (T_air − T_s) = L(T_s) · (ρ_sat(T_s) − ρ_in)/(1/(hm A) + 1/Q)      L: evaporation_heat
// and takes that rate for the whole film. With Q without bound this is the wet bulb. Without load: no time.
Plateau dry_off(const WetLoad& load, Length film, Temperature oven_air, const moist_air::HumidAir& intake,
                VolumeFlow fresh);

}  // namespace dampward::drying
