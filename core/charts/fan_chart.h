#pragma once

#include <optional>

#include "core/charts/alignment.h"
#include "core/charts/figures.h"

namespace dampward::charts {

// How much fresh air the mix of so many people at work needs.
struct FanChart {
  int most_people = 12;
  VolumeFlow least_rate, most_rate;  // of mix, used by each
  double fire = 0;     // fresh air for each rate of mix that keeps the place's share of the flammable limit
  double breathe = 0;  // that lets people breathe the room's mixed air
  std::optional<VolumeFlow> fan;  // what the place has
};

struct FanScales {
  ScaleOf<double> people;
  ScaleOf<VolumeFlow> fire, breathe;  // fresh air, both on one line
  ScaleOf<VolumeFlow> rate;
  Alignment ruler() const { return {people.scale, rate.scale, fire.scale}; }
};

// ln air = ln people + ln rate + a constant (a steady release into a mixed room, room_air/air_needs.h): a ruler is exact.
// Promise: rates in order, the needs above zero.
FanScales placed(const FanChart& chart, const Frame& frame);

}  // namespace dampward::charts
