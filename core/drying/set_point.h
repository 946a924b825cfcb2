#pragma once

#include <optional>
#include <span>
#include <string>

#include "core/drying/part_limit.h"
#include "core/shop/shop.h"

namespace dampward::drying {

// Below this (120 °F) nobody bakes: the trade's rule ends there and hours become days. Such a load goes
// without heat.
inline constexpr Temperature coldest_bake = Temperature::fahrenheit(120);

// What an oven adds to its set point at the hottest place, for the worst part.
struct OvenExcess {
  TemperatureStep evenness, swing, lamps;
  TemperatureStep sum() const { return evenness + swing + lamps; }
};

// Lamps at the coolest air a bake has: cooler air carries less heat off, so the rise is at its highest.
// Promise: the lamps have no fault.
OvenExcess oven_excess(const shop::Oven& oven);

enum class SetPointBound { part, oven_setting, heat };

struct SetPoint {
  Temperature set;                            // whole °C
  SetPointBound bound = SetPointBound::part;  // what keeps it from being higher
};

// The highest whole degree at which the peak of every part, set + excess, stays at or under what the neediest
// allows, within the oven's settings and what its heat reaches. Nothing where that lies below `coldest_bake`
// or below the oven's coldest setting.
std::optional<SetPoint> highest_set_point(Temperature lowest_allowed, const OvenExcess& excess,
                                          const shop::Oven& oven, Temperature reachable);

// The trade's rule of thumb: 3 h at 160 °F (71 °C) and one hour more for each 10 °F less. Common practice, no
// source. Nothing below 49 °C or above 71 °C, where the rule says nothing.
std::optional<Duration> rule_hours(Temperature set);

}  // namespace dampward::drying
