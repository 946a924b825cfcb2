#include "workbench/detail/plan_needs.h"

#include <algorithm>
#include <set>

#include "core/base/format.h"
#include "core/base/text.h"
#include "core/coating/mixing.h"
#include "core/line/calendar.h"
#include "core/records/shelf.h"
#include "core/room_air/air_needs.h"
#include "core/room_air/exposure_index.h"
#include "core/room_air/separation.h"
#include "core/route/lifting.h"
#include "workbench/detail/cautions.h"
#include "workbench/detail/kind_case.h"
#include "workbench/detail/window_words.h"

namespace dampward::workbench {
namespace {

Range<Volume> sum(const Range<Volume>& a, const Range<Volume>& b) {
  return {a.low + b.low, a.typical + b.typical, a.high + b.high};
}

StockNeed need_of(const std::string& item, const std::string& name, const Range<Volume>& needed,
                  const std::vector<records::StockLot>& stock, Date last_coat) {
  StockNeed need{item, name, needed, {}, {}, {}, false, {}};
  for (const auto* lot : records::in_order_of_use(stock, item, last_coat)) {
    need.lots.push_back(lot->lot);
    need.in_stock += lot->amount;
    need.shelf.push_back({lot->lot, lot->amount, lot->expires, false});
  }
  for (const auto& lot : stock) {
    if (lot.item != item || records::usable(lot, last_coat)) continue;
    need.expired.push_back(lot.lot);
    need.shelf.push_back({lot.lot, lot.amount, lot.expires, true});
  }
  need.is_short = need.in_stock < needed.typical;
  need.to_get = std::max(Volume{}, needed.high - need.in_stock);
  return need;
}

// The most any gun or brush in use gives off, and the near zone of whoever holds it; where nothing is planned, any the shop owns.
struct Source {
  MassFlow volatiles;
  room_air::NearZone zone;
};
Source strongest_source(const std::vector<UnitDraft>& units, const PaintShop& paint, const shop::Shop& shop) {
  Source most;
  for (const UnitDraft& unit : units) {
    if (unit.coat->volatiles > most.volatiles) most = {unit.coat->volatiles, unit.coat->zone};
  }
  if (!units.empty()) return most;
  for (const shop::Gun& gun : shop.guns) most.volatiles = std::max(most.volatiles, volatiles_of(gun, paint));
  return most;
}

// Every tenth minute of the worst day's mixed air, and each turn of the curve between them; long clean stretches left out.
std::vector<RoomAir::Point> curve_of(const PlanAir& air, room_air::AirState state, Instant from,
                                     const WallClock& clock) {
  constexpr double nothing = 5e-5;  // of the limit: rounds to 0.0 %
  const auto date_of = [&](int minute) {
    return std::chrono::floor<std::chrono::days>(clock.local(line::instant_of(minute, from)));
  };
  const auto share_at = [&](int minute) { return room_air::flammable_share(air.fire, minute, state); };
  std::vector<RoomAir::Point> curve;
  const int tenth = 10;
  for (int minute = air.fire.from; minute < air.fire.end(); ++minute) {
    if (date_of(minute) != date_of(air.peak.minute)) continue;
    const double before = share_at(minute - 1), now = share_at(minute), after = share_at(minute + 1);
    const bool turns = (now - before) * (after - now) < 0;
    const bool clean = std::max({before, now, after}) < nothing;
    if (!clean && (turns || minute % tenth == 0)) curve.push_back({line::instant_of(minute, from), now});
  }
  return curve;
}

// What may be hot or spark within reach of the vapour; a distance nobody wrote down counts as near.
std::vector<std::string> heat_near(const shop::Shop& shop) {
  std::vector<std::string> hot;
  for (const shop::Oven& oven : shop.ovens) {
    if (near_solvent(oven, shop.spray)) hot.push_back(oven.name);
  }
  for (const shop::HeatSource& source : shop.spray.heat_sources) {
    if (!room_air::may_be_on_together(shop.spray.room, source.room, source.distance))
      hot.push_back(source.name);
  }
  return hot;
}

std::string litres(Volume volume) {
  return fixed(volume.in(litre), 1);
}

std::vector<std::string> texts_of(const std::vector<LotId>& lots) {
  std::vector<std::string> texts;
  for (const LotId& lot : lots) texts.push_back(lot.text);
  return texts;
}

// Parts the lacquer only may soften, in one sentence; empty where there are none.
std::string drop_test(const UnitDraft& unit) {
  std::vector<std::string> names;
  for (const auto& conflict : unit.route.conflicts) {
    if (!conflict.named) names.push_back(conflict.name);
  }
  if (names.empty()) return "";
  return format("{}: the wet lacquer may soften {}: try a drop on a stray piece of each first.",
                unit.kind->kind->name, listed(names));
}

}  // namespace

std::vector<StockNeed> stock_needs(const std::vector<UnitDraft>& units, const PaintShop& paint,
                                   const std::vector<records::StockLot>& stock, Date last_coat) {
  Range<Volume> lacquer, thinner;
  for (const UnitDraft& unit : units) {
    lacquer = sum(lacquer, unit.coat->consumption.lacquer);
    thinner = sum(thinner, unit.coat->consumption.thinner);
  }
  if (units.empty()) return {};
  std::vector<StockNeed> needs{
      need_of(paint.lacquer->id.text, paint.lacquer->name, lacquer, stock, last_coat)};
  if (thinner.high.si() > 0) {
    const std::string name = paint.thinner == nullptr ? paint.lacquer->thinner : paint.thinner->name;
    needs.push_back(need_of(paint.lacquer->thinner, name, thinner, stock, last_coat));
  }
  return needs;
}

RoomAir room_report(const std::vector<UnitDraft>& units, const PaintShop& paint, const shop::Shop& shop,
                    const PlanAir& air, Instant from, const WallClock& clock) {
  RoomAir room;
  room.place = shop.spray.name;
  room.limit_share = paint.fire_share.share;
  room.fan = paint.room.fresh_air;
  room.length = shop.spray.length;
  room.width = shop.spray.width;
  room.ways_out = shop.spray.ways_out;
  room.hot = heat_near(shop);
  room.because.push_back(paint.fire_share.reason);
  if (paint.vapour) {
    const auto at_limit = room_air::mixture_index(paint.worst_for_people, paint.vapour->lower_limit);
    if (at_limit && *at_limit > 0) room.people_share = paint.limit_factor / *at_limit;
    room.lower_limit = paint.vapour->lower_limit;
    if (paint.room.fresh_air > VolumeFlow{}) room.purge = paint.purge;
  }
  if (paint.lacquer->composition.empty()) {
    room.because.push_back(
        "the lacquer's composition is unknown: the worst solvents of the table stand in for it");
  }
  const Source source = strongest_source(units, paint, shop);
  const auto needs = room_air::air_needs(source.volatiles, paint.worst_for_fire, paint.worst_for_people,
                                         paint.fire_share, paint.room.mixing, paint.air);
  room.fan_fire = std::max(needs.fire, air.needed.fire);
  room.fan_people = needs.people;
  if (!units.empty())
    room.fan_people = air.needed.people ? std::max(needs.people, air.needed.people) : std::nullopt;
  if (!room.fan_people) {
    room.because.push_back(
        "some solvent in use has no exposure limit: no air is known to be enough for people");
  }
  if (units.empty()) {
    room.respirator = "nothing is coated";
    return room;
  }
  if (paint.vapour) {
    room.worst_share = air.peak.share;
    room.near_share = air.peak.near_share;
    room.worst_at = line::instant_of(air.peak.minute, from);
    room.curve = curve_of(air, paint.air, from, clock);
  }
  if (const auto there = air_at_the_gun(source.volatiles, source.zone, paint)) {
    room.exposure_index = there->exposure_index;
  }
  room.respirator = "none by the vapour figures; a fitted mask against spray mist all the same";
  double trust = 0;
  for (const PersonAir& person : air.people) {
    if (!person.respirator_factor || *person.respirator_factor <= trust) continue;
    trust = *person.respirator_factor;
    room.respirator = person.respirator;
    room.because.push_back(person.person.text + ": " + person.because);
  }
  room.because.push_back(
      "coats, flashing films, mixing, cleaning, touch-up, rinsing the gun and rags in an open can are in "
      "these figures; the "
      "amounts beside the coats are estimates on the high side");
  room.because.push_back(
      "the near zone is richer than the room, and the cone of the gun itself burns whatever the room's "
      "figure says");
  room.because.push_back("air that is enough against fire is never thereby enough for people");
  room.because.push_back(
      "the air for people is for the mixed air of the room; nobody's near zone is cleared by a fan in the "
      "wall");
  return room;
}

std::vector<Caution> cautions_for(const std::vector<UnitPlan>& units,
                                  const std::vector<hazards::Hazard>& table) {
  std::set<std::string> steps{"all", "mix", "store", "waste"};
  for (const UnitPlan& unit : units) {
    for (const UnitStep& step : unit.steps) {
      steps.insert(step.hazard_step);
      steps.insert(step.hazard_step_too);
    }
  }
  return cautions_at(steps, table);
}

std::vector<std::string> warnings_for(const std::vector<UnitDraft>& units,
                                      const std::vector<LoadDraft>& loads, const PaintShop& paint,
                                      const shop::Shop& shop, const Plan& plan) {
  const shop::SprayPlace& place = shop.spray;
  std::vector<std::string> warnings;
  const auto say = [&](const std::string& sentence) {
    if (!sentence.empty() && std::find(warnings.begin(), warnings.end(), sentence) == warnings.end()) {
      warnings.push_back(sentence);
    }
  };
  for (const StockNeed& need : plan.stock) {
    if (need.is_short) {
      say(format("{} is short: {} L in stock, {} to {} L needed. Get {} L more before work begins.",
                 need.name, litres(need.in_stock), litres(need.needed.low), litres(need.needed.high),
                 litres(need.to_get)));
    } else if (need.in_stock < need.needed.high) {
      say(format("{} may run short: stock covers the usual use, not the worst. {} L more would.", need.name,
                 litres(need.to_get)));
    }
    if (!need.expired.empty()) {
      say(format("{}: {} will be past its date before the last coat and is not counted.", need.name,
                 listed(texts_of(need.expired))));
    }
  }
  for (const MixedPot& pot : plan.mixing) {
    if (pot.outlasted)
      say(format("A coat on {} takes longer than a pot lives: mix it in smaller batches.",
                 pot.units.front().text));
  }
  if (plan.air.one_reading) {
    say("One reading of the air stands behind the whole plan: read again every 4 h at the work, and plan "
        "anew if it is damper.");
  }
  for (const UnitPlan& unit : plan.units) {
    if (unit.due && *unit.due < plan.from)
      say(unit.unit.text + " was due before work starts: is the year right?");
  }
  if (plan.units.empty()) return warnings;
  if (place.ways_out < 2)
    say("The " + place.name + " has only one way out: keep it clear, and make a second before spraying.");
  if (!place.low_extraction)
    say("Solvent vapour sinks: the extraction of the " + place.name + " belongs near the floor.");
  if (!place.shelter_from_rain) say("The " + place.name + " is open to rain: coat only in dry hours.");
  if (!place.shelter_from_dust || !place.makeup_air_filtered) {
    say("Dust reaches the wet film in the " + place.name + ": shelter it, or filter the air that comes in.");
  }
  if (place.kind == shop::PlaceKind::van || place.kind == shop::PlaceKind::tent) {
    say("The " + place.name +
        " is a small closed space: measured air flow, a permit, and somebody outside watching during every "
        "coat.");
  }
  for (const LoadDraft& load : loads) {
    if (load.oven->evenness.si() <= 0 || load.oven->swing.si() <= 0) {
      say("The " + load.oven->name +
          " is said to be as hot in every place, or never to swing: measure it before it is trusted.");
    }
    if (!load.oven->control_amid_load)
      say("Hang the control thermostat of the " + load.oven->name + " amid the load.");
    if (!load.oven->separate_thermometer) {
      say("Put a separate thermometer into the " + load.oven->name +
          ": the control's own reading proves nothing.");
    }
    if (!load.oven->independent_cutoff) {
      say("The " + load.oven->name + " has no independent cut-out: never leave it unattended while hot.");
    }
  }
  for (const UnitDraft& unit : units) {
    if (const auto carrying = route::carrying(*unit.kind->kind, shop.site); !carrying.warning.empty())
      say(carrying.warning);
  }
  bool sprayed = false;
  for (const UnitDraft& unit : units) {
    for (const auto& conflict : unit.route.conflicts) {
      if (conflict.named) say(unit.kind->kind->name + ": " + conflict.why + ".");
    }
    sprayed = sprayed || unit.route.way.way == equipment::CoatingWay::spray_stripped;
  }
  for (const UnitDraft& unit : units) {
    if (!unit.window) continue;
    for (const std::string& warning : unit.window->warnings) say(warning);
  }
  for (const std::string& warning : window_warnings(plan)) say(warning);
  if (plan.power) {
    const auto kilowatts = [](Power power) { return fixed(power.in(kilowatt), 1) + " kW"; };
    say(format(
        "The supply gives {}, {} of it always on: ovens and powered guns take turns, {} at most at once.",
        kilowatts(plan.power->gives), kilowatts(plan.power->always_on), kilowatts(plan.power->peak)));
  }
  if (sprayed) {
    const auto views = coating::thinning_views(*paint.lacquer, paint.thinner_density,
                                               paint.lacquer->thinner_parts_for_spray);
    if (views.disagree) say(views.view);
  }
  for (const UnitDraft& unit : units) {
    if (unit.trade && unit.trade->disagree) say(unit.kind->kind->name + ": " + unit.trade->view);
    for (const std::string& doubt : unit.kind->doubts) say(doubt);
  }
  for (const UnitDraft& unit : units) say(drop_test(unit));
  return warnings;
}

}  // namespace dampward::workbench
