#include "workbench/detail/unit_draft.h"

#include <algorithm>
#include <cmath>

#include "core/base/format.h"
#include "core/base/promise.h"
#include "core/room_air/air_needs.h"

namespace dampward::workbench {
namespace {

route::RouteFacts facts_of(const KindCase& kind, const LoadDraft* load) {
  route::RouteFacts facts;
  if (load != nullptr) {
    const drying::BakePlan& bake = load->bake;
    const Duration safe = load->in_oven(), nominal = safe - bake.hold + bake.hold_nominal;
    facts.drying = route::Heat{bake.set, bake.set + bake.excess.sum(), {nominal, safe, safe}};
    if (load->held) std::get<route::Heat>(facts.drying).stepped_to = load->held->down.set;
  } else {
    const ColdCase& cold = *kind.cold;
    const std::string means = cold.plan.warmed
                                  ? format("warm dry box at {} °C", fixed(cold.plan.air.celsius(), 0))
                                  : std::string("dry box with desiccant at room temperature");
    facts.drying =
        route::NoHeat{cold.reason, means, {cold.plan.time_nominal, cold.plan.time, cold.plan.time}};
  }
  return facts;
}

// The window's times go into the gaps the route left open for them.
void set_window(route::Route& route, const coating::WarmWindow& window) {
  for (route::StepGap& gap : route.gaps) {
    if (gap.kind != route::GapKind::warm_window) continue;
    if (!gap.to_end) gap.shortest = std::max(gap.shortest, window.opens);
    gap.longest = window.closes;
  }
}

// What of the route refused it: isolation never, because a kind that holds it is refused before.
Barrier route_barrier(const route::Route& route) {
  const auto& [reason, settle] = *route.refused;
  if (!route.way.possible) return {Rule::coating_method, "", reason, settle};
  const auto missing = std::find_if(route.cleaning.begin(), route.cleaning.end(),
                                    [](const route::CleanerChoice& choice) { return !choice.found; });
  return {Rule::cleaner, missing == route.cleaning.end() ? "" : missing->soil, reason, settle};
}

std::string units_way(equipment::CoatingWay way) {
  return way == equipment::CoatingWay::spray_stripped ? "spray it" : "brush it";
}

}  // namespace

std::string barrier_to_cold_coat(const KindCase& kind, const CoatCase& coat, const PaintShop& paint,
                                 const RulingAir& air) {
  const coating::WarmWindow window = window_case(kind, nullptr, coat, paint, air).window();
  return window.usable() ? "" : coating::words(window, coat.work);
}

UnitDraft draft_unit(const records::QueuedUnit& queued, const KindCase& kind, const LoadDraft* load,
                     const route::Means& means, const PaintShop& paint, const RulingAir& air) {
  UnitDraft draft;
  draft.queued = &queued;
  draft.kind = &kind;
  const auto refuse = [&](Barrier barrier) {
    draft.refused = Refusal{std::move(barrier), queued.serial, queued.kind};
    return draft;
  };
  if (paint.closed) return refuse(*paint.closed);
  draft.route = route::make_route({*kind.kind, queued.findings, queued.soils}, means, facts_of(kind, load));
  if (draft.route.refused) return refuse(route_barrier(draft.route));

  draft.coat = coat_case(*kind.kind, draft.route.way.way, paint, means.shop);
  if (!draft.coat) {
    return refuse({Rule::coating_method, "",
                   format("The route would {}, but the shop lists nothing to do it with.",
                          units_way(draft.route.way.way)),
                   "Add a gun or brush to the shop's files, or coats for that method to the lacquer."});
  }
  if (paint.capacity && draft.coat->volatiles > paint.capacity->volatiles) {
    const VolumeFlow needed =
        room_air::air_needs(draft.coat->volatiles, paint.worst_for_fire, paint.worst_for_people,
                            paint.fire_share, paint.room.mixing, paint.air)
            .fire;
    return refuse(
        {Rule::vapour_share, draft.coat->gun->id.text,
         format("To {} in the {} would take its air above {} % of the vapour's lower flammable limit.",
                units_way(draft.route.way.way), means.shop.spray.name,
                fixed(paint.fire_share.share * 100, 0)),
         format("A measured fan of {} m³/min or more with an opening to the outside, a smaller gun, or work "
                "outdoors.",
                fixed(std::ceil(needed.in(cubic_metre_per_minute)), 0))});
  }

  const auto air_there = air_at_the_gun(draft.coat->volatiles, draft.coat->zone, paint);
  if (air_there && air_there->respirator.verdict == room_air::RespiratorChoice::Verdict::refuse) {
    return refuse(
        {Rule::respirator, draft.coat->gun->id.text,
         format("To {} in the {} would put the person at the gun into air no respirator is meant for: {}.",
                units_way(draft.route.way.way), means.shop.spray.name, air_there->respirator.reason),
         "More air, a smaller gun, a brush, or a lacquer with a slower or less harmful solvent."});
  }

  const WindowCase window_of = window_case(kind, load, *draft.coat, paint, air);
  const coating::WarmWindow window = window_of.window();
  if (!window.usable()) {
    return refuse({Rule::warm_window, window.shut_by, coating::words(window, draft.coat->work), ""});
  }
  draft.window = window;
  draft.regains = window_of.regains;
  if (load != nullptr) draft.trade = coating::warm_coat_views(window_of.surfaces, window_of.rules);
  set_window(draft.route, window);
  return draft;
}

}  // namespace dampward::workbench
