#include "workbench/detail/coat_case.h"

#include <algorithm>

#include "core/base/format.h"
#include "core/materials/composition.h"
#include "core/room_air/exposure_index.h"
#include "core/room_air/separation.h"
#include "core/shop/crew.h"
#include "workbench/detail/solvent_habits.h"

namespace dampward::workbench {
namespace {

using materials::Method;

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

bool has_skill(const shop::Person& person, const char* skill) {
  return std::find(person.skills.begin(), person.skills.end(), skill) != person.skills.end();
}

// The longest shift of anybody who sprays or brushes shortens the limits (at least eight hours count).
double shift_factor(const shop::Shop& shop) {
  Duration longest = 8 * hour;
  for (const shop::Person& person : shop.crew) {
    if (!has_skill(person, "spray") && !has_skill(person, "brush")) continue;
    for (const auto& [day, spans] : person.shifts.days) {
      for (const shop::DailyHours& span : spans) {
        longest = std::max(longest, static_cast<double>((span.to - span.from).count()) * minute);
      }
    }
  }
  return room_air::long_day_factor(longest);
}

// Why no solvent may be used in the place at all: something hot too near, no way out, nobody to watch, unknown or isocyanate.
std::optional<Barrier> closed_place(const shop::Shop& shop, const materials::Lacquer& lacquer,
                                    const materials::Liquid* thinner) {
  const shop::SprayPlace& place = shop.spray;
  for (const shop::HeatSource& source : place.heat_sources) {
    if (room_air::may_be_on_together(place.room, source.room, source.distance)) continue;
    return Barrier{
        Rule::heat_near_solvent, source.name,
        format("\"{}\" may be hot within 6.1 m of the {}, and nothing hot may be on there from mixing to the "
               "end of the purge.",
               source.name, place.name),
        "Take it away for good, or write down where it stands and how far: another room, more than 6.1 m."};
  }
  if (place.ways_out < 1) {
    return Barrier{Rule::way_out, "", format("The {} has no way out.", place.name),
                   "Two clear ways out, doors that open outward."};
  }
  const bool confined = place.kind == shop::PlaceKind::van || place.kind == shop::PlaceKind::tent;
  if (confined && std::count_if(shop.crew.begin(), shop.crew.end(), shop::comes_in) < 2) {
    return Barrier{
        Rule::watcher, "",
        format("The {} is a small closed space and nobody is left to watch from outside.", place.name),
        "A second person outside while lacquer is in use, or work outdoors."};
  }
  const bool thinned = lacquer.thinner_parts_for_spray > 0 || lacquer.thinner_parts_for_brush > 0;
  const bool thinner_unknown = thinned && (thinner == nullptr || thinner->composition.empty());
  if (lacquer.composition.empty() || thinner_unknown) {
    return Barrier{Rule::solvents_unknown, lacquer.composition.empty() ? lacquer.id.text : lacquer.thinner,
                   format("Nobody knows which solvents are in {}, so nobody knows what their vapour does.",
                          lacquer.composition.empty() ? lacquer.name : "the thinner of " + lacquer.name),
                   "Write its composition down from the safety sheet of the can."};
  }
  if (lacquer.isocyanate) {
    return Barrier{
        Rule::isocyanate, lacquer.id.text,
        format("{} sets isocyanate free: its mist can give asthma for life, cartridges do not hold it, and "
               "everybody else must stay out until the place is measured clear, which this plan cannot "
               "arrange.",
               lacquer.name),
        "Take a lacquer of another family."};
  }
  return std::nullopt;
}

// What may be given off at once before the air at the strongest gun comes to a figure dangerous to life: its own near zone leaves so
// much for the room. A solvent without such a figure sets none; nobody breathes it without supplied air.
MassFlow short_of_danger(const shop::Shop& shop, const PaintShop& paint) {
  MassFlow most = paint.capacity->volatiles;
  double moles = 0;
  const auto amount = [](const room_air::VolatilePart& part) {
    return part.share.fraction() / part.molar_mass.si();
  };
  for (const auto& part : paint.worst_for_people.parts) moles += amount(part);
  for (const auto way : {equipment::CoatingWay::spray_stripped, equipment::CoatingWay::brush_assembled}) {
    const shop::Gun* gun = gun_for(way, shop);
    if (gun == nullptr) continue;
    const VolumeFlow source = volatiles_of(*gun, paint) * (paint.vapour->vapour_per_kilogram / kilogram);
    const double near = room_air::steady_excess(zone_of(*gun, shop, paint), source).fraction();
    for (const auto& part : paint.worst_for_people.parts) {
      if (!part.danger_to_life) continue;
      const double left = part.danger_to_life->fraction() / (amount(part) / moles) - near;
      const VolumeFlow vapour = std::max(0.0, left) * paint.room.mixing * paint.room.fresh_air;
      most = std::min(most, (vapour / paint.vapour->vapour_per_kilogram) * kilogram);
    }
  }
  return most;
}

}  // namespace

Method method_of(const shop::Gun& gun) {
  if (gun.kind == shop::GunKind::brush) return Method::brush;
  return gun.power ? Method::power_gun : Method::hand_gun;
}

room_air::NearZone zone_of(const shop::Gun& gun, const shop::Shop& shop, const PaintShop& paint) {
  return gun.kind == shop::GunKind::brush ? zone_of_bench(shop.spray, paint.room.fresh_air)
                                          : zone_of_gun(shop.spray, paint.room.fresh_air);
}

Range<Density> density_of_thinner(const materials::Liquid* thinner,
                                  std::span<const materials::Solvent> solvents) {
  if (thinner == nullptr) return materials::volatile_density({}, solvents);
  return thinner->density ? Range(*thinner->density)
                          : materials::volatile_density(thinner->composition, solvents);
}

Density volatiles_per_volume(const PaintShop& paint, double thinner_parts) {
  const auto solids = coating::non_volatile(paint.lacquer->solids_by_mass.value, paint.lacquer->density.value,
                                            paint.thinner_density, thinner_parts);
  const Density mix =
      (paint.lacquer->density.value.high + thinner_parts * paint.thinner_density.high) / (1 + thinner_parts);
  return (1 - solids.low.fraction()) * mix;
}

Result<PaintShop> paint_shop(const Workshop& workshop, room_air::AirState air) {
  PaintShop paint;
  paint.air = air;
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
  paint.thinner_density = density_of_thinner(paint.thinner, solvents);
  const auto room = room_air::room_of(workshop.shop.spray);
  if (!room) return room.problems();
  paint.room = *room;
  paint.fire_share = room_air::fire_share(workshop.shop.spray);

  // Lacquer and thinner as they meet in the gun, each by the mass of its volatile part.
  const double parts = paint.lacquer->thinner_parts_for_spray;
  const double lacquer_mass = paint.lacquer->density.value.typical.si() *
                              (1 - paint.lacquer->solids_by_mass.value.typical.fraction());
  const double thinner_mass = parts * paint.thinner_density.typical.si();
  const auto blend = [&](room_air::Worst worst) {
    std::vector<room_air::VolatileShare> liquids{
        {room_air::worst_mixture(paint.lacquer->composition, solvents, worst), lacquer_mass}};
    if (thinner_mass > 0) {
      const auto recipe =
          paint.thinner == nullptr ? std::vector<materials::SolventPart>{} : paint.thinner->composition;
      liquids.push_back({room_air::worst_mixture(recipe, solvents, worst), thinner_mass});
    }
    return room_air::blended(liquids);
  };
  paint.worst_for_fire = blend(room_air::Worst::fire);
  paint.worst_for_people = blend(room_air::Worst::people);
  paint.vapour = room_air::evaporated(paint.worst_for_fire, air);
  paint.limit_factor = shift_factor(workshop.shop);
  paint.closed = closed_place(workshop.shop, *paint.lacquer, paint.thinner);
  if (paint.vapour) {
    paint.capacity = room_air::capacity(paint.room, *paint.vapour, paint.fire_share);
    paint.most_at_once = short_of_danger(workshop.shop, paint);
  }
  // Whatever it starts from: the time hangs on the ratio alone.
  paint.purge = room_air::purge_time(paint.room, VapourShare::fraction(1), VapourShare::fraction(cleared))
                    .value_or(purge_without_fan);
  return paint;
}

std::optional<double> for_a_long_day(std::optional<double> index, const PaintShop& paint) {
  if (!index || paint.limit_factor <= 0) return std::nullopt;
  return *index / paint.limit_factor;
}

std::optional<AirAtTheGun> air_at_the_gun(MassFlow volatiles, const room_air::NearZone& zone,
                                          const PaintShop& paint) {
  if (!paint.vapour) return std::nullopt;
  const VolumeFlow source = volatiles * (paint.vapour->vapour_per_kilogram / kilogram);
  const auto room = room_air::steady_concentration(paint.room, source);
  if (!room) return std::nullopt;
  const VapourShare there = VapourShare::fraction(
      std::min(1.0, room->fraction() + room_air::steady_excess(zone, source).fraction()));
  const auto index = for_a_long_day(room_air::mixture_index(paint.worst_for_people, there), paint);
  return AirAtTheGun{there, index,
                     room_air::choose_respirator(paint.worst_for_people, there, paint.lacquer->isocyanate,
                                                 paint.limit_factor)};
}

MassFlow volatiles_of(const shop::Gun& gun, const PaintShop& paint) {
  return gun.fluid_rate * volatiles_per_volume(paint, coating::thinner_parts(*paint.lacquer, method_of(gun)));
}

std::optional<CoatCase> coat_case(const equipment::Kind& kind, equipment::CoatingWay way,
                                  const PaintShop& paint, const shop::Shop& shop) {
  CoatCase result;
  result.gun = gun_for(way, shop);
  if (result.gun == nullptr) return std::nullopt;
  result.method = method_of(*result.gun);
  const bool stripped = way == equipment::CoatingWay::spray_stripped;
  const auto consumption =
      coating::consumption((stripped ? kind.spray_area_stripped : kind.spray_area_assembled).value,
                           *paint.lacquer, paint.solvent, {result.method, result.gun->efficiency});
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
  const auto work = coating::coating_work(*paint.lacquer, result.method,
                                          one_coat(hands_on.high, consumption->ready.typical));
  if (!work) return std::nullopt;
  result.work = *work;

  const double parts = coating::thinner_parts(*paint.lacquer, result.method);
  result.volatiles = volatiles_of(*result.gun, paint);
  result.volatiles_of_coat = volatiles_per_volume(paint, parts) * consumption->ready.high / coats;
  result.zone = zone_of(*result.gun, shop, paint);
  return result;
}

}  // namespace dampward::workbench
