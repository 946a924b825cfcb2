#include "core/route/route.h"

#include <algorithm>

#include "core/base/format.h"
#include "core/route/detail/labour.h"
#include "core/route/detail/writer.h"
#include "core/shop/crew.h"

namespace dampward::route {
namespace {

using detail::times;
using detail::words;
using equipment::CoatingWay;
using equipment::ValveChoice;

// Share of the masks that are plugs, caps and paper, which stand any bake; the rest is tape. Estimate.
constexpr double share_without_tape = 0.5;

ValveChoice valve_choice(const shop::Shop& shop) {
  return shop.valves_stay ? ValveChoice::stay_as_masks : ValveChoice::come_out;
}

const materials::CoatRule* rule_for(const materials::Lacquer& lacquer, materials::Method method) {
  const auto rule =
      std::find_if(lacquer.coats.begin(), lacquer.coats.end(),
                   [&](const materials::CoatRule& r) { return r.method == method && r.coats > 0; });
  return rule == lacquer.coats.end() ? nullptr : &*rule;
}

// The rule of the best gun in the shop that the lacquer has a rule for: a power gun puts on more at once.
const materials::CoatRule* spray_rule(const Means& means) {
  const materials::CoatRule* rule = nullptr;
  for (const shop::Gun& gun : means.shop.guns) {
    if (gun.kind == shop::GunKind::brush) continue;
    const auto* own =
        rule_for(means.lacquer, gun.power ? materials::Method::power_gun : materials::Method::hand_gun);
    if (own != nullptr && (rule == nullptr || gun.power)) rule = own;
  }
  return rule;
}

void time_masks(const Means& means, const RouteFacts& facts, Route& route) {
  const bool spray = route.way.way == CoatingWay::spray_stripped;
  const Range<Duration> mask = spray ? route.way.spray.mask : route.way.brush.mask;
  const MaskTiming before{true, mask, {}};
  const MaskTiming split{false, times(share_without_tape, mask), times(1 - share_without_tape, mask)};
  const auto* heat = std::get_if<Heat>(&facts.drying);
  const bool tape_stands = heat == nullptr || heat->hottest_place <= means.shop.tape_rating;
  route.masking = tape_stands ? before : split;
  route.masking_otherwise = tape_stands ? split : before;
  const std::string rating = fixed(means.shop.tape_rating.celsius(), 0);
  if (heat == nullptr) {
    route.masking_reason = "no bake: tape and all goes on before drying, and costs no minutes after it";
  } else if (tape_stands) {
    route.masking_reason = format(
        "tape rated {} °C stands the bake ({} °C at its hottest place), so all masks go on before; common "
        "tape "
        "would have to wait and cost the window {}",
        rating, fixed(heat->hottest_place.celsius(), 0), words(split.after));
  } else {
    route.masking_reason = format(
        "tape is rated {} °C and the bake reaches {} °C: plugs, caps and paper before ({}), tape after ({}), "
        "out of "
        "the warm window; tape rated for the bake would give those minutes back",
        rating, fixed(heat->hottest_place.celsius(), 0), words(split.before), words(split.after));
  }
}

std::optional<Refusal> cannot_clean(const std::vector<CleanerChoice>& cleaning) {
  for (const CleanerChoice& choice : cleaning) {
    if (choice.found) continue;
    return Refusal{choice.reason,
                   format("get a cleaner that is good for {} and list it under [cleaners], or write down "
                          "another soil if it is none",
                          choice.soil)};
  }
  return std::nullopt;
}

std::string method_settle(const Means& means) {
  return format(
      "list a gun and give somebody the skill \"spray\", or give somebody the skill \"brush\"; {} must have "
      "a coat "
      "rule for it",
      means.lacquer.name);
}

}  // namespace

std::optional<Refusal> isolation(const equipment::Kind& kind, std::span<const hazards::Hazard> hazards) {
  for (const equipment::Part& part : kind.parts) {
    for (const HazardId& id : part.hazards) {
      const auto hazard =
          std::find_if(hazards.begin(), hazards.end(), [&](const hazards::Hazard& h) { return h.id == id; });
      if (hazard == hazards.end()) {
        return Refusal{format("{} carries the hazard {}, which is in no table here", part.name, id.text),
                       "correct the hazard's id in the kind, or add its row"};
      }
      if (!hazard->isolate) continue;
      return Refusal{
          format("{}: {} ({}); nothing of the unit is heated, opened or coated", part.name, hazard->name,
                 id.text),
          format("leave it closed, tag it and keep it apart until a licensed hand has taken {} out: {}",
                 part.name, hazard->guard)};
    }
  }
  return std::nullopt;
}

Worklists worklists(const Subject& subject, const Means& means) {
  const auto conflicts = solvent_conflicts(subject.kind, means.materials,
                                           contact_of(means.lacquer, means.thinner, means.solvents));
  return worklists(subject.kind, means.materials, valve_choice(means.shop), conflicts);
}

Route make_route(const Subject& subject, const Means& means, const RouteFacts& facts) {
  Route route;
  route.version = facts.version;
  route.kind = subject.kind.id;
  route.refused = isolation(subject.kind, means.hazards);
  if (route.refused) return route;

  const materials::CoatRule* by_gun = spray_rule(means);
  const materials::CoatRule* by_brush = rule_for(means.lacquer, materials::Method::brush);
  route.way = choose_way(subject.kind, {by_gun != nullptr && shop::crew_can(means.shop, "spray"),
                                        by_brush != nullptr && shop::crew_can(means.shop, "brush")});
  if (!route.way.possible) {
    route.refused = Refusal{route.way.reason, method_settle(means)};
    return route;
  }
  route.conflicts = solvent_conflicts(subject.kind, means.materials,
                                      contact_of(means.lacquer, means.thinner, means.solvents));
  const ValveChoice valves = valve_choice(means.shop);
  route.lists = worklists(subject.kind, means.materials, valves, route.conflicts);
  route.valves = valve_views(subject.kind, valves);

  std::vector<PartId> out;
  for (const ListedPart& part : route.lists.removed) out.push_back(part.part);
  route.cleaning = choose_cleaners(soils_of(subject.soils, subject.findings), subject.kind, out,
                                   means.cleaners, means.materials, means.solvents);
  route.refused = cannot_clean(route.cleaning);
  if (route.refused) return route;

  time_masks(means, facts, route);
  const bool spray = route.way.way == CoatingWay::spray_stripped;
  detail::Writer(subject, means, facts, spray ? *by_gun : *by_brush, route).write();
  return route;
}

}  // namespace dampward::route
