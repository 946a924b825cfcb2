#pragma once

#include <span>
#include <string>
#include <variant>

#include "core/drying/bake.h"
#include "core/drying/oven_piece.h"
#include "core/drying/wall.h"
#include "core/moist_air/humid_air.h"
#include "core/shop/shop.h"

namespace dampward::drying {

// The oven after the bake as a warm place to wait in: lamps off, set so low that no part is hotter than the lacquer allows at the
// oven's hottest place, and the vent shut once it has come down.
struct StepDown {
  Temperature set;      // of the thermostat
  Duration takes;       // until the last inner node at the hottest place is down to what the lacquer allows
  Temperature coldest;  // the oven's coldest place then
  Pressure vapour;      // in the oven's air: the room's, for the leak brings it in
  RelativeHumidity humidity;  // of that air at the coldest place: what parts stand in while they wait
};
struct NoStepDown {
  std::string reason;
};
using StepDownAnswer = std::variant<StepDown, NoStepDown>;

// The load cools from the bake's hottest, door shut and vent as it was, on the slow side of every range: heat capacities high,
// the wall's loss low (`mixed_load.h`). Unevenness shrinks with the oven's warmth over the room, for it grows with the heat that
// flows: an estimate. The thermostat's swing stays as it is.
//   set = (hottest − swing + e · room)/(1 + e),   e = evenness/(bake's set − room)
// None where the room is as hot as that, the thermostat goes no lower or only lamps heat, or after a day the load is still hotter.
StepDownAnswer step_down(const shop::Oven& oven, const Wall& wall, std::span<const LoadUnits> load,
                         const BakePlan& bake, const moist_air::HumidAir& room, Temperature hottest);

}  // namespace dampward::drying
