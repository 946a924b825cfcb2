#include "workbench/detail/solvent_habits.h"

#include <algorithm>

namespace dampward::workbench {
namespace {

// Air drawn through the place at least so fast: through the face of a ventilated booth, else through the widest section.
Speed draught(const shop::SprayPlace& place, VolumeFlow fresh_air) {
  const Area face = place.width * place.height;
  if (place.kind == shop::PlaceKind::booth && place.ventilated_booth) return fresh_air / face;
  return fresh_air / std::max({face, place.length * place.height, place.length * place.width});
}

}  // namespace

room_air::NearZone zone_of_gun(const shop::SprayPlace& place, VolumeFlow fresh_air) {
  return room_air::ball(ball_about_work, std::max(about_a_gun, draught(place, fresh_air)));
}

room_air::NearZone zone_of_bench(const shop::SprayPlace& place, VolumeFlow fresh_air) {
  return room_air::half_ball(arms_length, std::max(still_room, draught(place, fresh_air)));
}

}  // namespace dampward::workbench
