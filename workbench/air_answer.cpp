#include "workbench/air_answer.h"

#include <algorithm>

#include "core/base/format.h"
#include "core/base/text.h"
#include "core/coating/consumption.h"
#include "core/moist_air/atmosphere.h"
#include "core/room_air/air_needs.h"
#include "core/room_air/exposure_index.h"
#include "workbench/detail/cautions.h"
#include "workbench/detail/coat_case.h"
#include "workbench/detail/shop_air.h"
#include "workbench/workshop.h"

namespace dampward::workbench {
namespace {

constexpr Duration working_day = 8 * hour;
// Where nobody says how warm it is: a hot shop, on the safe side (more vapour, a lower flammable limit). An estimate.
constexpr Temperature hot_shop = Temperature::celsius(40);

Result<const shop::Gun*> gun_of(const AirQuestion& question, const shop::Shop& shop, const PaintShop& paint) {
  const shop::Gun* strongest = nullptr;
  std::vector<std::string> known;
  for (const shop::Gun& gun : shop.guns) {
    known.push_back(gun.id.text);
    if (question.gun && gun.id != *question.gun) continue;
    if (strongest == nullptr || volatiles_of(gun, paint) > volatiles_of(*strongest, paint)) strongest = &gun;
  }
  if (strongest != nullptr) return strongest;
  if (known.empty())
    return Problem{{"spray.toml"}, "no gun and no brush", "one table [guns.NAME] or more", ""};
  return Problem{{"command line"},
                 "--gun " + question.gun->text + ", which the shop has not",
                 "one of " + listed(known),
                 did_you_mean(question.gun->text, known)};
}

Result<Temperature> warmth_of(const Workshop& workshop, const records::RecordStore* records,
                              const AirQuestion& question) {
  if (question.warm) return *question.warm;
  if (records == nullptr) return hot_shop;
  const auto air = air_at_start(workshop, *records);
  if (!air) return air.problems();
  return air->warmest;
}

double amount(const room_air::VolatilePart& part) {
  return part.share.fraction() / part.molar_mass.si();
}

std::vector<VapourPart> parts_of(const room_air::Mixture& mixture, VapourShare vapour) {
  double whole = 0;
  for (const auto& part : mixture.parts) whole += amount(part);
  std::vector<VapourPart> parts;
  for (const auto& part : mixture.parts) {
    parts.push_back({part.name, VapourShare::fraction(vapour.fraction() * amount(part) / whole), part.limit,
                     part.lower_limit, part.assumed});
  }
  return parts;
}

// All vapour together in which the class may be used: its factor times the limit of the mix, never above a figure dangerous
// to life.
std::optional<VapourShare> highest_use(const AirAnswer& answer, const room_air::Mixture& mixture) {
  if (answer.respirator.respirator == nullptr || !answer.exposure_index || !(*answer.exposure_index > 0))
    return std::nullopt;
  double whole = 0;
  for (const auto& part : mixture.parts) whole += amount(part);
  std::optional<VapourShare> danger;
  for (const auto& part : mixture.parts) {
    if (!part.danger_to_life) return std::nullopt;
    const auto of_mix = VapourShare::fraction(part.danger_to_life->fraction() * whole / amount(part));
    danger = danger ? std::min(*danger, of_mix) : of_mix;
  }
  const auto limit = VapourShare::fraction(answer.at_the_gun.fraction() / *answer.exposure_index);
  return room_air::highest_use(*answer.respirator.respirator, limit, danger);
}

void breathe(AirAnswer& answer, const AirQuestion& question, const PaintShop& paint, const shop::Gun& gun,
             const shop::Shop& shop) {
  if (!paint.vapour) {
    answer.fire_safe = true;
    answer.respirator.reason = "nothing in it counts as solvent vapour; a fitted mask against spray mist";
    answer.respirator.verdict = room_air::RespiratorChoice::Verdict::none_needed;
    answer.people_safe = true;
    return;
  }
  const auto vapour_of = [&](MassFlow flow) { return flow * (paint.vapour->vapour_per_kilogram / kilogram); };
  const VolumeFlow source = vapour_of(answer.volatiles);
  const auto steady = room_air::steady_concentration(paint.room, source);
  const Volume used_up = question.used_up ? source * question.used_up->within : Volume{};
  answer.in_the_room = question.used_up ? room_air::worst_case(paint.room, used_up, question.used_up->within)
                                        : steady.value_or(VapourShare::fraction(1));
  answer.lower_limit = paint.vapour->lower_limit;
  answer.room_share = answer.in_the_room.fraction() / answer.lower_limit->fraction();
  answer.fire_safe = *answer.room_share <= answer.limit_share;
  const auto needs = room_air::air_needs(answer.volatiles, paint.worst_for_fire, paint.worst_for_people,
                                         paint.fire_share, paint.room.mixing, paint.air);
  answer.fan_fire = needs.fire;
  answer.fan_people = needs.people;
  answer.most_rate = paint.capacity->volatiles.si() / answer.volatiles.si() * answer.rate;

  const room_air::NearZone zone = zone_of(gun, shop, paint);
  const auto there = air_at_the_gun(answer.volatiles, zone, paint);
  answer.at_the_gun = there ? there->vapour : VapourShare::fraction(1);
  answer.near_share = answer.at_the_gun.fraction() / answer.lower_limit->fraction();
  if (there) {
    answer.exposure_index = there->exposure_index;
    answer.respirator = there->respirator;
  } else {
    answer.respirator.reason = "no fresh air comes in, so the vapour only rises";
  }
  answer.exposure_room = for_a_long_day(
      room_air::mixture_index(paint.worst_for_people, steady.value_or(answer.in_the_room)), paint);
  if (answer.exposure_index) answer.exposure_day = *answer.exposure_index * (answer.at_it / working_day);
  answer.people_safe = answer.respirator.verdict == room_air::RespiratorChoice::Verdict::none_needed;
  answer.highest_use = highest_use(answer, paint.worst_for_people);
  answer.parts = parts_of(paint.worst_for_people, answer.at_the_gun);
  const auto allowed = VapourShare::fraction(answer.limit_share * answer.lower_limit->fraction());
  answer.purge = room_air::purge_time(paint.room, std::max(answer.in_the_room, allowed),
                                      VapourShare::fraction(cleared * allowed.fraction()));
}

void explain(AirAnswer& answer, const PaintShop& paint) {
  answer.because.push_back(answer.limit_reason);
  answer.because.push_back("air that is enough against fire is never thereby enough for people");
  answer.because.push_back(
      "the near zone is richer than the room, and the cone of a gun itself burns whatever the room's figure "
      "says");
  answer.because.push_back(
      "nothing hot, and nothing not rated for vapour, is on within 6.1 m from mixing to the end of the "
      "purge");
  answer.because.push_back("the respirator is chosen for the air at the gun as if it were on all day");
  if (!paint.worst_for_people.composition_known)
    answer.because.push_back("the composition is unknown: the worst solvents of the table stand in for it");
  if (answer.fire_safe && !answer.people_safe)
    answer.warnings.push_back("Fire-safe, but not safe to breathe: " + answer.respirator.reason + ".");
  if (!answer.fire_safe)
    answer.warnings.push_back(
        format("The air would come to {} % of the lower flammable limit; {} % is allowed.",
               fixed(100 * answer.room_share.value_or(0), 0), fixed(100 * answer.limit_share, 0)));
  if (answer.lower_limit && !answer.fan_people)
    answer.warnings.push_back("Some solvent has no exposure limit: no air is known to be enough for people.");
}

}  // namespace

Result<AirAnswer> air_answer(const Workshop& workshop, const records::RecordStore* records,
                             const AirQuestion& question) {
  const shop::Shop& shop = workshop.shop;
  const auto warm = warmth_of(workshop, records, question);
  if (!warm) return warm.problems();
  auto made = paint_shop(workshop, {*warm, moist_air::standard_pressure(shop.site.altitude)});
  if (!made) return made.problems();
  PaintShop paint = std::move(made).value();
  if (question.shift) paint.limit_factor = room_air::long_day_factor(*question.shift);
  const auto chosen = gun_of(question, shop, paint);
  if (!chosen) return chosen.problems();
  const shop::Gun& gun = **chosen;

  AirAnswer answer;
  answer.basis = shop.site.name.empty() ? "the shipped tables" : shop.site.name;
  answer.place = shop.spray.name;
  answer.gun = gun.name;
  answer.liquid = paint.lacquer->name;
  answer.volume = paint.room.volume;
  answer.fan = paint.room.fresh_air;
  answer.mixing = paint.room.mixing;
  answer.temperature = *warm;
  answer.closed = paint.closed;
  answer.limit_share = paint.fire_share.share;
  answer.limit_reason = paint.fire_share.reason;
  answer.rate = question.used_up ? question.used_up->mix / question.used_up->within : gun.fluid_rate;
  answer.volatiles =
      answer.rate * volatiles_per_volume(paint, coating::thinner_parts(*paint.lacquer, method_of(gun)));
  answer.at_it = question.at_it     ? *question.at_it
                 : question.used_up ? question.used_up->within
                                    : std::max(working_day, question.shift.value_or(working_day));
  breathe(answer, question, paint, gun, shop);
  explain(answer, paint);
  answer.cautions = cautions_at({"all", "mix", "coat", "flash", "waste"}, workshop.hazards);
  return answer;
}

}  // namespace dampward::workbench
