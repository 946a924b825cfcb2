#include "core/room_air/capacity.h"

#include <algorithm>
#include <cmath>

#include "core/base/promise.h"

namespace dampward::room_air {
namespace {

constexpr double where_people_stand = 0.10;
constexpr double in_a_ventilated_booth = 0.25;
// Average through the open face of a booth, 100 ft/min. Source: WAC 296-24-37003, as 29 CFR 1910.107(b)(5)(i) (read).
constexpr Speed least_face_velocity = 0.51 * metre_per_second;
constexpr double more_units_than_any_shop = 1000;

}  // namespace

FireShare fire_share(const shop::SprayPlace& place) {
  const Area face = place.width * place.height;
  const bool swept = place.fan && face.si() > 0 && *place.fan / face >= least_face_velocity;
  if (place.kind == shop::PlaceKind::booth && place.ventilated_booth && swept) {
    return {in_a_ventilated_booth, "a ventilated booth may reach 25 % of the lower flammable limit"};
  }
  switch (place.kind) {
    case shop::PlaceKind::van:
    case shop::PlaceKind::tent:
      return {where_people_stand, "people inside a confined space: 10 % of the lower flammable limit"};
    case shop::PlaceKind::booth:
      return {where_people_stand,
              place.ventilated_booth
                  ? "the booth's fan does not move its air at 0.51 m/s through the face: 10 % of the lower "
                    "flammable limit, as where people stand"
                  : "the booth is not stated to be ventilated: 10 % of the lower flammable limit, as where "
                    "people stand"};
    case shop::PlaceKind::room:
    case shop::PlaceKind::outdoors:
      break;
  }
  return {where_people_stand, "people stand there: 10 % of the lower flammable limit"};
}

Capacity capacity(const Room& room, const EvaporatedMix& mix, FireShare share) {
  Capacity most;
  most.allowed = VapourShare::fraction(share.share * mix.lower_limit.fraction());
  most.vapour = most.allowed.fraction() * room.mixing * room.fresh_air;
  most.vapour_in_still_air = most.allowed.fraction() * room.mixing * room.volume;
  most.volatiles = (most.vapour / mix.vapour_per_kilogram) * kilogram;
  most.volatiles_in_still_air = (most.vapour_in_still_air / mix.vapour_per_kilogram) * kilogram;
  return most;
}

int units_at_once(const Room& room, const EvaporatedMix& mix, FireShare share, Mass volatiles,
                  Duration released_over) {
  DAMPWARD_PROMISE(volatiles > Mass{}, "a coated unit gives off solvent");
  const Capacity most = capacity(room, mix, share);
  const double still = most.volatiles_in_still_air / volatiles;
  const double carried = most.volatiles * released_over / volatiles;
  // A hair of rounding must not cost a whole unit.
  return static_cast<int>(
      std::floor(std::clamp(std::max(still, carried) + 1e-9, 0.0, more_units_than_any_shop)));
}

}  // namespace dampward::room_air
