#pragma once

#include "core/line/problem.h"

namespace dampward::line::detail {

// Sums of volumes and masses that are a thousandth of a litre or kilogram too much are rounding, not load.
inline constexpr Volume volume_slack = 1e-3 * litre;
inline constexpr Mass mass_slack = 1e-3 * kilogram;

inline Volume volume_of(const Load& load) {
  Volume sum{};
  for (const Member& member : load.members) sum += member.volume;
  return sum;
}

inline Mass mass_of(const Load& load) {
  Mass sum{};
  for (const Member& member : load.members) sum += member.mass;
  return sum;
}

// Whether the whole load goes into the oven.
inline bool takes(const Oven& oven, const Load& load) {
  return (!oven.volume || volume_of(load) <= *oven.volume + volume_slack) &&
         (!oven.mass || mass_of(load) <= *oven.mass + mass_slack);
}

}  // namespace dampward::line::detail
