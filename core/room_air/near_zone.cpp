#include "core/room_air/near_zone.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/base/promise.h"

namespace dampward::room_air {
namespace {

// `part` of a ball: its volume and free surface shrink alike, for the bench is no free surface.
NearZone part_of_ball(Length radius, Speed air, double part) {
  DAMPWARD_PROMISE(radius > Length{} && air > Speed{}, "a near zone has a size and moving air");
  const Area surface = part * 4 * std::numbers::pi * (radius * radius);
  return {part * (4.0 / 3) * std::numbers::pi * (radius * radius * radius), 0.5 * (surface * air)};
}

}  // namespace

NearZone ball(Length radius, Speed air) {
  return part_of_ball(radius, air, 1);
}

NearZone half_ball(Length radius, Speed air) {
  return part_of_ball(radius, air, 0.5);
}

VapourShare steady_excess(const NearZone& zone, VolumeFlow source) {
  DAMPWARD_PROMISE(zone.exchange > VolumeFlow{}, "a near zone exchanges its air");
  return VapourShare::fraction(std::min(1.0, source / zone.exchange));
}

VapourShare excess(const NearZone& zone, VolumeFlow source, VapourShare at_start, Duration after) {
  DAMPWARD_PROMISE(zone.volume > Volume{} && zone.exchange > VolumeFlow{},
                   "a near zone has a size and exchanges its air");
  const double kept = std::exp(-(zone.exchange * after / zone.volume));
  const double share = source / zone.exchange * (1 - kept) + at_start.fraction() * kept;
  return VapourShare::fraction(std::min(1.0, share));
}

}  // namespace dampward::room_air
