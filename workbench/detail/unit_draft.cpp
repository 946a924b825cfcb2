#include "workbench/detail/unit_draft.h"

#include <algorithm>

#include "core/base/format.h"
#include "core/base/promise.h"

namespace dampward::workbench {
namespace {

const drying::PieceBake& piece_in(const drying::BakePlan& bake, const KindId& kind) {
  const auto found =
      std::find_if(bake.pieces.begin(), bake.pieces.end(), [&](const auto& piece) { return piece.kind == kind; });
  DAMPWARD_PROMISE(found != bake.pieces.end(), "a load's bake names every kind in it");
  return *found;
}

// The surfaces that decide the window: the heaviest lump from the oven's hottest place, cooling as slowly as it may, and the
// set as a whole from the coolest, cooling as fast as it may.
std::vector<coating::Surface> surfaces_of(const drying::BakePlan& bake, const KindId& kind, Temperature room) {
  const drying::PieceBake& piece = piece_in(bake, kind);
  const TemperatureStep off = bake.excess.evenness + bake.excess.swing;
  return {{"its heaviest iron", coating::LumpedCooling{bake.set + off, room, piece.heavy_cooling.high}},
          {"the set as a whole", coating::LumpedCooling{bake.set - off, room, piece.whole_cooling.low}}};
}

route::RouteFacts facts_of(const KindCase& kind, const LoadDraft* load) {
  route::RouteFacts facts;
  if (load != nullptr) {
    const drying::BakePlan& bake = load->bake;
    const Duration start = bake.plateau + bake.warm_up;
    facts.drying = route::Heat{bake.set, bake.set + bake.excess.sum(),
                               {start + bake.hold_nominal, start + bake.hold, start + bake.hold}};
  } else {
    const ColdCase& cold = *kind.cold;
    const std::string means = cold.plan.warmed
                                  ? format("warm dry box at {} °C", fixed(cold.plan.air.celsius(), 0))
                                  : std::string("dry box with desiccant at room temperature");
    facts.drying = route::NoHeat{cold.reason, means,
                                 {cold.plan.time_nominal, cold.plan.time, cold.plan.time}};
  }
  return facts;
}

// The window's times go into the gaps the route left open for them.
void set_window(route::Route& route, const coating::WarmWindow& window) {
  const Duration last = window_closes(window);
  for (route::StepGap& gap : route.gaps) {
    if (gap.kind != route::GapKind::warm_window) continue;
    if (gap.to_end) {
      gap.longest = last;
    } else {
      gap.shortest = std::max(gap.shortest, window.opens);
      gap.longest = last;
    }
  }
}

std::string units_way(equipment::CoatingWay way) {
  return way == equipment::CoatingWay::spray_stripped ? "spray it" : "brush it";
}

}  // namespace

bool closed_by_regain(const coating::WarmWindow& window) {
  return !window.closes || *window.closes > window.opens + regain_allows;
}

Duration window_closes(const coating::WarmWindow& window) {
  return closed_by_regain(window) ? window.opens + regain_allows : *window.closes;
}

UnitDraft draft_unit(const records::QueuedUnit& queued, const KindCase& kind, const LoadDraft* load,
                     const route::Means& means, const PaintShop& paint, const coating::ShopAir& air) {
  UnitDraft draft;
  draft.queued = &queued;
  draft.kind = &kind;
  const auto refuse = [&](std::string reason, std::string settle) {
    draft.refused = Refusal{queued.serial, queued.kind, std::move(reason), std::move(settle)};
    return draft;
  };
  draft.route = route::make_route({*kind.kind, queued.findings, queued.soils}, means, facts_of(kind, load));
  if (draft.route.refused) return refuse(draft.route.refused->reason, draft.route.refused->settle);

  draft.coat = coat_case(*kind.kind, draft.route.way.way, paint, means.shop);
  if (!draft.coat) {
    return refuse(format("The route would {}, but the shop lists nothing to do it with.", units_way(draft.route.way.way)),
                  "Add a gun or brush to the shop's files, or coats for that method to the lacquer.");
  }
  if (paint.capacity && draft.coat->volatiles > paint.capacity->volatiles) {
    const VolumeFlow needed = paint.room.fresh_air.si() > 0
                                  ? draft.coat->volatiles / paint.capacity->volatiles * paint.room.fresh_air
                                  : VolumeFlow{};
    return refuse(format("To {} in the {} would take its air above {} % of the vapour's lower flammable limit.",
                         units_way(draft.route.way.way), means.shop.spray.name,
                         fixed(paint.fire_share.share * 100, 0)),
                  needed.si() > 0 ? format("A measured fan of {} m³/min or more, a smaller gun, or work outdoors.",
                                           fixed(needed.in(cubic_metre_per_minute) + 0.5, 0))
                                  : "Open the place to the outside and give it a measured fan, or work outdoors.");
  }

  const auto air_there = air_at_the_gun(*draft.coat, paint);
  if (air_there && air_there->respirator.verdict == room_air::RespiratorChoice::Verdict::refuse) {
    return refuse(format("To {} in the {} would put the person at the gun into air no respirator is meant for.",
                         units_way(draft.route.way.way), means.shop.spray.name),
                  air_there->respirator.reason);
  }

  const coating::WindowRules rules = coating::window_rules(*paint.lacquer);
  // Dried without heat it is as warm as the room.
  const auto surfaces = load != nullptr
                            ? surfaces_of(load->bake, kind.kind->id, air.temperature)
                            : std::vector<coating::Surface>{
                                  {"the set", coating::LumpedCooling{air.temperature, air.temperature, hour}}};
  const coating::WarmWindow window = coating::warm_window(surfaces, air, rules, draft.coat->work);
  if (!window.usable()) {
    return refuse(coating::words(window, draft.coat->work),
                  "Coat in dried or cooler air, in cooler hours, or take another lacquer.");
  }
  draft.window = window;
  if (load != nullptr) draft.trade = coating::warm_coat_views(surfaces, rules);
  set_window(draft.route, window);
  return draft;
}

}  // namespace dampward::workbench
