#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/drying/oven_piece.h"
#include "core/moist_air/humid_air.h"

namespace dampward::drying {

// The dry box for what must not be baked. Estimates: a humidity card in the box settles its air.
struct DryBox {
  Temperature warm = Temperature::celsius(40);  // a warm cabinet's air, where every part allows it
  Area tray = 0.1 * square_metre;  // of spread desiccant a unit; its still air slows the vapour down
  Range<RelativeHumidity> humidity = {
      RelativeHumidity::percent(10), RelativeHumidity::percent(20),
      RelativeHumidity::percent(30)};  // kept by desiccant, changed or regenerated in time
};

// Drying without an oven.
struct NoHeatPlan {
  Temperature air;  // warm cabinet, or the shop's own air where a part allows no more
  bool warmed = false;
  RelativeHumidity humidity;    // the box must stay this dry or drier
  Duration time, time_nominal;  // safe side and typical figures, surface water included
  PartId slowest_part;          // empty where only surface water is waited for
  std::vector<PartId> unknown;  // asked, but no figure says how fast water leaves them
  Mass water;                   // for the desiccant: surface water, safe side
  std::string words;
};

// A piece in a dry box, warmed to 40 °C or to what its weakest part allows, never below the shop's air. Same
// diffusion and film laws as in the oven. Everything here is an estimate: diffusivities are carried far below
// where they were known.
NoHeatPlan dry_without_heat(const OvenPiece& piece, const moist_air::HumidAir& shop_air,
                            const DryBox& box = {});

}  // namespace dampward::drying
