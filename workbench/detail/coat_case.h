#pragma once

#include <optional>
#include <span>
#include <string>

#include "core/coating/consumption.h"
#include "core/coating/mixing.h"
#include "core/coating/warm_window.h"
#include "core/equipment/kind.h"
#include "core/materials/liquid.h"
#include "core/room_air/capacity.h"
#include "core/room_air/mixture.h"
#include "core/room_air/near_zone.h"
#include "core/room_air/respirator.h"
#include "core/room_air/room.h"
#include "core/route/route.h"
#include "core/shop/shop.h"
#include "workbench/rule.h"
#include "workbench/workshop.h"

namespace dampward::workbench {

// The lacquer in use, its thinner and the air of the spray place, worked out once for the whole plan.
struct PaintShop {
  room_air::AirState air;
  const materials::Lacquer* lacquer = nullptr;
  const materials::Liquid* thinner = nullptr;  // none: unthinned, or not in the shop's list
  Range<Density> solvent;                      // of the lacquer's volatile part
  Range<Density> thinner_density;
  room_air::Room room;
  room_air::FireShare fire_share;
  room_air::Mixture worst_for_fire, worst_for_people;
  std::optional<room_air::EvaporatedMix> vapour;  // none: nothing in it burns
  std::optional<room_air::Capacity> capacity;     // for fire; none: nothing in it burns
  MassFlow most_at_once;    // what the timetable may give off at once: fire, and danger to life at the gun
  Duration purge;           // after the last coat or flash, until the place is clear of vapour
  double limit_factor = 1;  // what the longest shift of a spray or brush hand leaves of an exposure limit
  std::optional<Barrier> closed;  // why no solvent may be used in the place at all
};

// The place counts as clear once its air is at so small a part of what it may reach: an estimate, so that no pocket by the
// floor is left at the limit itself.
inline constexpr double cleared = 0.1;
// Without fresh air nobody can reckon when: a night.
inline constexpr Duration purge_without_fan = 12 * hour;

// How a gun or brush puts lacquer on.
materials::Method method_of(const shop::Gun& gun);

// Null, or a thinner nobody knows: the lightest to the heaviest solvent of the table.
Range<Density> density_of_thinner(const materials::Liquid* thinner,
                                  std::span<const materials::Solvent> solvents);

// Problem: the spray place has no size, or the lacquer in use is not in any table.
Result<PaintShop> paint_shop(const Workshop& workshop, room_air::AirState air);

// Coating one unit of a kind in one of the two ways.
struct CoatCase {
  materials::Method method = materials::Method::brush;
  const shop::Gun* gun = nullptr;  // none: no gun or brush of that sort is in the list
  coating::Consumption consumption;
  coating::CoatingWork work;  // hands-on of one coat and its flash, safe side
  Duration one_coat_typical;
  MassFlow volatiles;       // given off while the coat goes on: what the gun throws at most
  Mass volatiles_of_coat;   // of one coat in all, at most
  room_air::NearZone zone;  // about whoever puts it on
};

// The air about the hands while the coat goes on for ever: near zone above the room's mixed air, all solvent counted as vapour.
struct AirAtTheGun {
  VapourShare vapour;
  std::optional<double>
      exposure_index;  // Σ C/L without respirator, for the longest shift; none: some part has no limit
  room_air::RespiratorChoice respirator;
};
// An index over limits shortened for the longest shift; none: not known, or a day that leaves no rest.
std::optional<double> for_a_long_day(std::optional<double> index, const PaintShop& paint);

// None: the place has no fresh air, so the vapour only rises; or nothing in it burns or counts as solvent (water only).
std::optional<AirAtTheGun> air_at_the_gun(MassFlow volatiles, const room_air::NearZone& zone,
                                          const PaintShop& paint);

// The near zone of whoever holds the gun or brush.
room_air::NearZone zone_of(const shop::Gun& gun, const shop::Shop& shop, const PaintShop& paint);

// What a gun or brush gives off at most while it is in use.
MassFlow volatiles_of(const shop::Gun& gun, const PaintShop& paint);

// Mass of what evaporates in a volume of the mix in hand, at its most.
Density volatiles_per_volume(const PaintShop& paint, double thinner_parts);

// None: the shop has nothing to put it on with, or the lacquer is not meant for it.
std::optional<CoatCase> coat_case(const equipment::Kind& kind, equipment::CoatingWay way,
                                  const PaintShop& paint, const shop::Shop& shop);

}  // namespace dampward::workbench
