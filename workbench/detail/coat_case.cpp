#include "workbench/detail/coat_case.h"

#include <algorithm>

#include "core/materials/composition.h"
#include "core/room_air/exposure_index.h"

namespace dampward::workbench {
namespace {

using materials::Method;

Method method_of(const shop::Gun& gun) {
  if (gun.kind == shop::GunKind::brush) return Method::brush;
  return gun.power ? Method::power_gun : Method::hand_gun;
}

// The gun or brush that loses least; null where the shop has none of the sort.
const shop::Gun* gun_for(equipment::CoatingWay way, const shop::Shop& shop) {
  const bool brush = way == equipment::CoatingWay::brush_assembled;
  const shop::Gun* best = nullptr;
  for (const shop::Gun& gun : shop.guns) {
    if ((gun.kind == shop::GunKind::brush) != brush) continue;
    if (best == nullptr || gun.efficiency.typical > best->efficiency.typical) best = &gun;
  }
  return best;
}

// Mass of what evaporates in a volume of the mix in hand, at its most.
Density volatiles_per_volume(const PaintShop& paint, double thinner_parts) {
  const auto solids = coating::non_volatile(paint.lacquer->solids_by_mass.value, paint.lacquer->density.value,
                                            paint.thinner_density, thinner_parts);
  const Density mix = (paint.lacquer->density.value.high + thinner_parts * paint.thinner_density.high) /
                      (1 + thinner_parts);
  return (1 - solids.low.fraction()) * mix;
}

}  // namespace

Result<PaintShop> paint_shop(const Workshop& workshop, room_air::AirState air) {
  PaintShop paint;
  paint.lacquer = workshop.lacquers.find(workshop.shop.lacquer);
  if (paint.lacquer == nullptr) {
    return Problem{{"site.toml"},
                   "lacquer = \"" + workshop.shop.lacquer.text + "\"",
                   "the id of a lacquer in materials.toml or of a shipped family",
                   ""};
  }
  const auto& solvents = workshop.solvents.rows();
  paint.thinner = workshop.thinners.find(paint.lacquer->thinner);
  paint.solvent = materials::volatile_density(paint.lacquer->composition, solvents);
  paint.thinner_density = paint.thinner == nullptr ? materials::volatile_density({}, solvents)
                          : paint.thinner->density
                              ? Range(*paint.thinner->density)
                              : materials::volatile_density(paint.thinner->composition, solvents);
  const auto room = room_air::room_of(workshop.shop.spray);
  if (!room) return room.problems();
  paint.room = *room;
  paint.fire_share = room_air::fire_share(workshop.shop.spray);

  // Lacquer and thinner as they meet in the gun, each by the mass of its volatile part.
  const double parts = paint.lacquer->thinner_parts_for_spray;
  const double lacquer_mass =
      paint.lacquer->density.value.typical.si() * (1 - paint.lacquer->solids_by_mass.value.typical.fraction());
  const double thinner_mass = parts * paint.thinner_density.typical.si();
  const auto blend = [&](room_air::Worst worst) {
    std::vector<room_air::VolatileShare> liquids{
        {room_air::worst_mixture(paint.lacquer->composition, solvents, worst), lacquer_mass}};
    if (thinner_mass > 0) {
      const auto recipe = paint.thinner == nullptr ? std::vector<materials::SolventPart>{} : paint.thinner->composition;
      liquids.push_back({room_air::worst_mixture(recipe, solvents, worst), thinner_mass});
    }
    return room_air::blended(liquids);
  };
  paint.worst_for_fire = blend(room_air::Worst::fire);
  paint.worst_for_people = blend(room_air::Worst::people);
  paint.vapour = room_air::evaporated(paint.worst_for_fire, air);
  if (paint.vapour) paint.capacity = room_air::capacity(paint.room, *paint.vapour, paint.fire_share);
  return paint;
}

std::optional<AirAtTheGun> air_at_the_gun(const CoatCase& coat, const PaintShop& paint) {
  if (!paint.vapour) return std::nullopt;
  const VolumeFlow source = coat.volatiles * (paint.vapour->vapour_per_kilogram / kilogram);
  const auto steady = room_air::steady_concentration(paint.room, source);
  if (!steady) return std::nullopt;
  const bool sprayed = coat.method != Method::brush;
  return AirAtTheGun{*steady, steady->fraction() / paint.vapour->lower_limit.fraction(),
                     room_air::mixture_index(paint.worst_for_people, *steady),
                     room_air::choose_respirator(paint.worst_for_people, *steady, sprayed && paint.lacquer->isocyanate)};
}

std::optional<CoatCase> coat_case(const equipment::Kind& kind, equipment::CoatingWay way, const PaintShop& paint,
                                  const shop::Shop& shop) {
  CoatCase result;
  result.gun = gun_for(way, shop);
  if (result.gun == nullptr) return std::nullopt;
  result.method = method_of(*result.gun);
  const bool stripped = way == equipment::CoatingWay::spray_stripped;
  const auto consumption =
      coating::consumption((stripped ? kind.spray_area_stripped : kind.spray_area_assembled).value, *paint.lacquer,
                           paint.solvent, {result.method, result.gun->efficiency});
  if (!consumption) return std::nullopt;
  result.consumption = *consumption;

  // Hands-on time of one coat: the kind's minutes, but never less than the gun needs to pass the lacquer.
  const auto labour = kind.labour.find(equipment::Operation::coat);
  const auto coats = static_cast<double>(std::max(1, consumption->coats));
  const auto one_coat = [&](Duration all_coats, Volume ready) {
    const Duration passing = result.gun->fluid_rate.si() > 0 ? ready / result.gun->fluid_rate : Duration{};
    return std::max(all_coats, passing) / coats;
  };
  const Range<Duration> hands_on = labour == kind.labour.end() ? Range<Duration>{} : labour->second.hands_on;
  result.one_coat_typical = one_coat(hands_on.typical, consumption->ready.typical);
  const auto work = coating::coating_work(*paint.lacquer, result.method, one_coat(hands_on.high, consumption->ready.typical));
  if (!work) return std::nullopt;
  result.work = *work;

  const double parts = coating::thinner_parts(*paint.lacquer, result.method);
  const Density volatile_share = volatiles_per_volume(paint, parts);
  result.volatiles = result.gun->fluid_rate * volatile_share;
  // The film of one coat keeps at most what landed of it, and gives it off over its flash.
  const Volume landed = result.gun->efficiency.high.fraction() * consumption->ready.typical / coats;
  result.volatiles_in_flash = landed * volatile_share / work->one_flash;
  return result;
}

}  // namespace dampward::workbench
