#include "core/room_air/room.h"

#include <algorithm>
#include <cmath>

#include "core/base/format.h"

namespace dampward::room_air {
namespace {

VolumeFlow working_air(const Room& room) {
  return room.mixing * room.fresh_air;
}

VapourShare capped(double share) {
  return VapourShare::fraction(std::min(1.0, share));
}

}  // namespace

Result<Room> room_of(const shop::SprayPlace& place) {
  const Volume volume = place.length * place.width * place.height;
  Problems problems;
  if (!(volume > Volume{})) {
    problems.push_back(
        {{},
         "The spray place has no size.",
         "Length, width and height above zero.",
         "Outdoors: the size of the space the vapour stays in, such as the lee of the shelter."});
  }
  if (!(place.mixing > 0 && place.mixing <= 1)) {
    problems.push_back({{},
                        format("The mixing factor of the spray place is {}.", fixed(place.mixing, 2)),
                        "Above 0 and at most 1; 0.3 for an open shed.",
                        ""});
  }
  if (!problems.empty()) return problems;
  Room room{volume, {}, place.mixing};
  if (!place.opening_to_outside) return room;
  if (place.fan) room.fresh_air = *place.fan;
  if (place.air_changes_per_hour) {
    const VolumeFlow changes = *place.air_changes_per_hour * (volume / hour);
    room.fresh_air = place.fan ? std::min(room.fresh_air, changes) : changes;
  }
  return room;
}

VapourShare concentration(const Room& room, VolumeFlow source, VapourShare at_start, Duration after) {
  DAMPWARD_PROMISE(room.volume > Volume{} && room.mixing > 0, "a room has a volume that air reaches");
  const double changes = working_air(room) * after / room.volume;
  const double fresh = source * after / room.volume;
  // (1 − exp(−x))/x tends to 1 where no fan turns.
  const double kept = changes > 1e-12 ? -std::expm1(-changes) / changes : 1;
  return capped(fresh * kept + at_start.fraction() * std::exp(-changes));
}

std::optional<VapourShare> steady_concentration(const Room& room, VolumeFlow source) {
  if (!(working_air(room) > VolumeFlow{})) return std::nullopt;
  return capped(source / working_air(room));
}

std::optional<Duration> purge_time(const Room& room, VapourShare from, VapourShare to) {
  if (from <= to) return Duration{};
  if (!(working_air(room) > VolumeFlow{}) || !(to.fraction() > 0)) return std::nullopt;
  return std::log(from.fraction() / to.fraction()) * (room.volume / working_air(room));
}

VapourShare still_air(const Room& room, Volume vapour) {
  DAMPWARD_PROMISE(room.volume > Volume{} && room.mixing > 0, "a room has a volume that air reaches");
  return capped(vapour / (room.mixing * room.volume));
}

VapourShare worst_case(const Room& room, Volume vapour, Duration released_over) {
  const VapourShare still = still_air(room, vapour);
  if (!(released_over > Duration{})) return still;
  const std::optional<VapourShare> steady = steady_concentration(room, vapour / released_over);
  return steady ? std::min(still, *steady) : still;
}

VolumeFlow air_needed(VolumeFlow source, VapourShare allowed, double mixing) {
  DAMPWARD_PROMISE(allowed.fraction() > 0 && mixing > 0,
                   "air is asked for a share above zero in a room it reaches");
  return source / (allowed.fraction() * mixing);
}

}  // namespace dampward::room_air
