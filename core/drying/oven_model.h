#pragma once

#include <optional>
#include <string>

#include "core/drying/wall.h"
#include "core/moist_air/humid_air.h"
#include "core/quantity/quantity.h"
#include "core/quantity/temperature.h"
#include "core/shop/shop.h"

namespace dampward::drying {

// An oven as a heat balance: what it can put in, what it loses, what it must warm before the load.
struct OvenHeat {
  Power available;       // heater and lamps together, but never more than its supply gives
  HeatConductance loss;  // through the walls and with the vented air
  HeatCapacity own;      // air and lining
};

// The same oven in two nodes, its air and its lining, with the air's exchange of moisture.
struct OvenNodes {
  Power available;
  HeatCapacity air, lining;
  HeatConductance inside;  // from the air to the lining
  HeatConductance
      outside;  // from the lining to the room; with `inside` in series it is the loss through the walls
  HeatConductance vented;  // with the fresh air
  Mass dry_air;
  MassFlow fresh;  // of dry air through vent and cracks
};

// Losses with the wall's typical coefficient, its highest (the safe side for reach and warm-up) or its lowest (for cooling).
enum class Loss { typical, highest, lowest };

// Wall loss U · A of the inner walls, floor and door included, plus ρ cp of the fresh air (20 °C, 1.2 kg/m³).
// The lining counts as 1 mm of steel, an estimate; brick and wood store more, which this balance leaves out.
OvenHeat oven_heat(const shop::Oven& oven, const Wall& wall, Loss loss);

// The film of still air inside is 9 W/(m² K), as in data/ovens/walls.csv; a stirred oven has more, which would only
// warm the lining sooner. Fresh air is counted at this temperature: the volume a fan moves, thinned by the heat.
OvenNodes oven_nodes(const shop::Oven& oven, const Wall& wall, Loss loss,
                     const moist_air::HumidAir& oven_air);

// Where the balance settles with full power, empty and dry:  T = room + P/loss.
Temperature reachable(const OvenHeat& oven, Temperature room);

// Fresh air through the oven, and what leaks through its cracks even with the vent shut: half its volume an
// hour, an estimate that a smoke match at the door seam settles.
VolumeFlow fresh_air(const shop::Oven& oven);

Volume inside_volume(const shop::Oven& oven);

// Why these lamps cannot be reckoned with, in words; nothing when they can.
std::optional<std::string> lamp_fault(const shop::Oven& oven);

// Radiation on a surface facing the lamps at their distance.
//   one lamp    q = watts · radiant share/(Ω d²),  Ω = 2π (1 − cos(beam/2))
//   several     q times how many beams meet on one spot: lamps · Ω d²/smallest inner face, rounded up
// Own geometry; that beams spread over the smallest face is an estimate on the safe side. Walls that throw
// light back are left out.
// Promise: the oven has lamps without a fault.
HeatFlux lamp_flux(const shop::Oven& oven);

// How far a dark, insulated little surface in this light stands above the air around it, for ever:
//   rise = α q/(h_convection(rise) + h_radiation(rise)),  α = 0.95, emissivity 0.9, height 0.1 m
// The worst part: dark, light, nearest. A heavier, brighter or shaded one stays below. Zero without lamps.
TemperatureStep lamp_rise(const shop::Oven& oven, Temperature air);

}  // namespace dampward::drying
