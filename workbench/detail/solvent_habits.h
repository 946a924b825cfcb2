#pragma once

#include "core/quantity/quantity.h"
#include "core/room_air/near_zone.h"
#include "core/shop/shop.h"

namespace dampward::workbench {

// How solvent gets loose beside the coats themselves, and how near people are to it. Estimates all, on the high side, for no source was
// found; weighing a can before and after, and a smoke tube at the stand, would settle them.

// Mixing, straining and pouring: of what the unit's mix can give off, and the time before its first coat.
inline constexpr double lost_in_mixing = 0.03;  // 0.5 to 3 %
inline constexpr int mixing_minutes = 15;

// Cleaner wiped on: litres a square metre of the closed set's surface, and what the rag keeps of it.
inline constexpr Volume cleaner_per_square_metre = 120 * millilitre;  // 30 to 120 mL
inline constexpr double kept_in_rag = 0.2;
// A rag in an open can; a lidded one holds it.
inline constexpr Duration rag_nine_tenths = 4 * hour;

// Touch-up by brush, for each place of the list.
inline constexpr Volume touch_up_each = 5 * millilitre;  // 1 to 5 mL

// Rinsing the gun after the last coat of a stretch of work: thinner that gets loose; the rest is caught.
inline constexpr Volume loose_in_rinsing = 60 * millilitre;  // 10 to 60 mL of a quarter litre
inline constexpr int rinsing_minutes = 10;
// Coats this far apart have a rinsed gun between them: the mix would set in it.
inline constexpr int rinsed_after = 120;

// Where the hands are. At a turntable the near zone is a ball that holds work and face; at a bench half a ball of an arm's length
// (a usual choice for work by hand; read on an exposure modeller's page). The air there moves as fast as the fan draws it through the
// room's widest section, and at least so fast: 0.06 m/s in a still room (usual figure, from memory; a survey of 55 work places found
// 0.3 m/s on average, 85 % of its readings below that: Baldwin and Maynard 1998, abstract read); 0.1 m/s about a gun, whose jet stirs
// it (estimate, 0.1 to 0.3).
inline constexpr Length ball_about_work = 0.8 * metre, arms_length = 0.7 * metre;
inline constexpr Speed still_room = 0.06 * metre_per_second, about_a_gun = 0.1 * metre_per_second;

// The near zone of somebody spraying, or brushing and wiping, in the place.
room_air::NearZone zone_of_gun(const shop::SprayPlace& place, VolumeFlow fresh_air);
room_air::NearZone zone_of_bench(const shop::SprayPlace& place, VolumeFlow fresh_air);

}  // namespace dampward::workbench
