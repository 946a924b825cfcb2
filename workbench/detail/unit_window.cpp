#include "workbench/detail/unit_window.h"

#include <algorithm>
#include <cmath>

#include "core/base/promise.h"
#include "core/moist_air/saturation.h"

namespace dampward::workbench {
namespace {

// A set dried without heat is as warm as the room, whatever the room comes to.
std::vector<coating::Surface> room_surfaces(const RulingAir& air) {
  return {{"the set on a warm day", coating::LumpedCooling{air.warmest, air.warmest, hour}},
          {"the set on a cool day", coating::LumpedCooling{air.coolest, air.coolest, hour}}};
}

Temperature coldest_after(const drying::BakePlan& bake) {
  return bake.set - (bake.excess.evenness + bake.excess.swing);
}

// The regains of every part of the kind that the bake dried inside, under one course of temperature.
std::vector<PartRegain> regains_of(const KindCase& kind, const drying::BakePlan& bake,
                                   const drying::AfterBake& after) {
  std::vector<PartRegain> regains;
  for (const drying::PartBake& baked : bake.parts) {
    if (baked.kind != kind.piece.kind || !baked.asked || baked.dryness != drying::Dryness::dry) continue;
    const auto part = std::find_if(kind.piece.parts.begin(), kind.piece.parts.end(),
                                   [&](const drying::OvenPart& p) { return p.id == baked.part; });
    if (part == kind.piece.parts.end() || !part->body) continue;
    drying::Regain course = drying::regain(*part->body, baked.moisture, after);
    const bool gates = course.passes(drying::regain_allowed).value_or(regain_horizon) > hurry_helps;
    regains.push_back({baked.part, baked.name, gates, std::move(course)});
  }
  return regains;
}

drying::AfterBake cooling_down(const drying::PieceBake& piece, Temperature from, const RulingAir& air) {
  const coating::Surface whole{"", coating::LumpedCooling{from, air.coolest, piece.whole_cooling.low}};
  return {[whole](Duration t) { return whole.at(t); }, moist_air::saturation_pressure(air.dew_point),
          regain_horizon};
}

// Held in the oven at its coldest, in the room's vapour, then taken out.
drying::AfterBake held_then_cooling(const LoadDraft::Held& held, const drying::PieceBake& piece,
                                    const RulingAir& air) {
  const drying::AfterBake later = cooling_down(piece, held.down.coldest, air);
  return {[held, later](Duration t) {
            return t <= held.at_most ? held.down.coldest : later.part(t - held.at_most);
          },
          std::max(held.down.vapour, later.vapour), held.at_most + regain_horizon};
}

std::optional<Duration> first_to_pass(const std::vector<PartRegain>& regains, double share,
                                      const PartRegain** which) {
  std::optional<Duration> first;
  for (const PartRegain& part : regains) {
    if (!part.gates) continue;
    const auto passes = part.course.passes(share);
    if (!passes || (first && *first <= *passes)) continue;
    first = passes;
    *which = &part;
  }
  return first;
}

}  // namespace

const drying::PieceBake& piece_in(const drying::BakePlan& bake, const KindId& kind) {
  const auto found = std::find_if(bake.pieces.begin(), bake.pieces.end(),
                                  [&](const auto& piece) { return piece.kind == kind; });
  DAMPWARD_PROMISE(found != bake.pieces.end(), "a load's bake names every kind in it");
  return *found;
}

std::vector<coating::Surface> cooling_surfaces(const drying::PieceBake& piece, Temperature hottest,
                                               Temperature coldest, const RulingAir& air) {
  return {{"its heaviest iron", coating::LumpedCooling{hottest, air.warmest, piece.heavy_cooling.high}},
          {"the set as a whole", coating::LumpedCooling{coldest, air.coolest, piece.whole_cooling.low}}};
}

WindowCase window_case(const KindCase& kind, const LoadDraft* load, const CoatCase& coat,
                       const PaintShop& paint, const RulingAir& air) {
  WindowCase result{{},
                    {air.temperature, air.dew_point, air.humidity},
                    coating::window_rules(*paint.lacquer),
                    coat.work,
                    {}};
  if (load == nullptr) {
    result.surfaces = room_surfaces(air);
    return result;
  }
  const drying::BakePlan& bake = load->bake;
  const drying::PieceBake& piece = piece_in(bake, kind.kind->id);
  if (load->held) {
    const LoadDraft::Held& held = *load->held;
    result.surfaces = cooling_surfaces(piece, result.rules.hottest, held.down.coldest, air);
    result.regains = regains_of(kind, bake, held_then_cooling(held, piece, air));
    for (PartRegain& part : result.regains) part.course = part.course.counted_from(held.at_most);
    result.undescribed = regain_allows / 2;
  } else {
    result.surfaces = cooling_surfaces(piece, bake.set + bake.excess.sum(), coldest_after(bake), air);
    result.regains = regains_of(kind, bake, cooling_down(piece, coldest_after(bake), air));
  }
  return result;
}

coating::WarmWindow WindowCase::window() const {
  const PartRegain* slow = nullptr;
  const auto passes = first_to_pass(regains, drying::regain_allowed, &slow);
  if (passes) return coating::warm_window(surfaces, air, rules, work, coating::DampBack{slow->name, *passes});
  const coating::WarmWindow window = coating::warm_window(surfaces, air, rules, work);
  return coating::warm_window(surfaces, air, rules, work,
                              coating::DampBack{undescribed_parts, window.opens + undescribed});
}

Duration longest_held(const drying::BakePlan& bake, const drying::StepDown& down,
                      const std::vector<const KindCase*>& kinds) {
  Duration longest = regain_allows / 2;
  const drying::AfterBake waiting{[&](Duration) { return down.coldest; }, down.vapour, regain_horizon};
  for (const KindCase* kind : kinds) {
    const PartRegain* slow = nullptr;
    const auto regains = regains_of(*kind, bake, waiting);
    if (const auto passes = first_to_pass(regains, drying::regain_allowed / 2, &slow))
      longest = std::min(longest, *passes);
  }
  return longest;
}

}  // namespace dampward::workbench
