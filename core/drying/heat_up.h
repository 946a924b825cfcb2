#pragma once

#include <optional>
#include <span>
#include <vector>

#include "core/drying/oven_model.h"
#include "core/quantity/quantity.h"
#include "core/quantity/temperature_curve.h"

namespace dampward::drying {

// So near its final temperature a lump counts as there. An estimate: the swing of a simple thermostat.
inline constexpr TemperatureStep reached_within = 2 * kelvin;

// Units of one kind in an oven, as heat sees them.
struct OvenLump {
  HeatCapacity capacity;     // of one unit
  HeatConductance exchange;  // of one unit with the air around it
  int count = 1;
  std::optional<Duration>
      slow;  // time constant of its heavy lump; it follows the air but its heat is in `capacity`
};

struct HeatUp {
  Duration warm_up;                     // until the slowest lump is within reach of the set point
  std::vector<TemperatureCurve> whole;  // per OvenLump, from power on to the end of warm-up
  std::vector<TemperatureCurve> slow;   // its heavy lump; the same as `whole` where it has none
  Energy energy;                        // spent by the oven until then
};

// The load's heating with limited power: one node of air and lining, one node a unit, thermostat as an ideal
// valve that holds the air at the set point once it is there (its swing is reckoned in the peaks).
//   C dTa/dt = P − G (Ta − room) − Σ n g (Ta − T),   c dT/dt = g (Ta − T)
// Trapezoidal rule in steps of 20 s. Everything starts at room temperature. Nothing where the load is not
// warm after two days.
std::optional<HeatUp> heat_up(const OvenHeat& oven, Temperature room, Temperature set,
                              std::span<const OvenLump> load);

}  // namespace dampward::drying
