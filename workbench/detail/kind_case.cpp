#include "workbench/detail/kind_case.h"

#include <algorithm>
#include <array>
#include <functional>

#include "core/base/format.h"
#include "core/base/promise.h"
#include "core/drying/oven_model.h"
#include "core/equipment/kind.h"
#include "core/line/calendar.h"
#include "core/room_air/separation.h"
#include "core/route/lifting.h"
#include "core/shop/power.h"

namespace dampward::workbench {
namespace {

using Sides = std::array<Length, 3>;

std::string celsius(Temperature t) {
  return fixed(t.celsius(), 0) + " °C";
}

drying::PartsOut removed_parts(const route::Worklists& lists) {
  drying::PartsOut out;
  for (const auto& part : lists.removed) out.insert(part.part);
  return out;
}

// The part that keeps a piece out of the oven, in words.
std::string weakest_words(const drying::OvenPiece& piece) {
  const drying::OvenPart* weakest = piece.weakest();
  if (weakest == nullptr) return "no part of it has a known heat limit.";
  const auto& limit = *weakest->limit;
  return format("the limit of {} is {} ({} less a margin of {} K).", weakest->name, celsius(limit.allowed()),
                celsius(limit.limit), fixed(limit.margin.in(kelvin), 0));
}

// An oven beside the solvent work stands cold whenever anybody coats, so it is used only where no other will do.
void keep_far_ones(std::vector<OvenChoice>& ovens, const shop::SprayPlace& spray) {
  const auto far = [&](const OvenChoice& choice) { return !near_solvent(*choice.oven, spray); };
  if (std::any_of(ovens.begin(), ovens.end(), far)) std::erase_if(ovens, std::not_fn(far));
}

}  // namespace

bool fits_inside(const equipment::Kind& kind, const shop::Oven& oven) {
  Sides unit = {kind.length.value.high, kind.width.value.high, kind.height.value.high};
  Sides space = {oven.inside_length, oven.inside_width, oven.inside_height};
  std::sort(unit.begin(), unit.end());
  std::sort(space.begin(), space.end());
  for (std::size_t i = 0; i < unit.size(); ++i) {
    if (unit[i] + clearance > space[i]) return false;
  }
  return equipment::outer_volume(kind) <= fullest * drying::inside_volume(oven);
}

bool near_solvent(const shop::Oven& oven, const shop::SprayPlace& spray) {
  return !room_air::may_be_on_together(spray.room, oven.room, oven.distance_to_spray);
}

WatchedStretches watched_stretches(const shop::Shop& shop, Instant from) {
  constexpr line::Minute two_weeks = 14 * 24 * 60;
  line::Calendar watched;
  for (const shop::Person& person : shop.crew) {
    if (std::find(person.skills.begin(), person.skills.end(), "oven") == person.skills.end()) continue;
    watched = line::joined(watched, line::calendar_of(person.shifts, shop.site.clock, from, two_weeks));
  }
  WatchedStretches stretches;
  for (const shop::Oven& oven : shop.ovens) {
    line::Minute longest = 0;
    const auto powered = line::calendar_of(oven.powered, shop.site.clock, from, two_weeks);
    for (const line::Span& span : line::common(watched, powered)) longest = std::max(longest, span.length());
    stretches[oven.id] = static_cast<double>(longest) * minute;
  }
  return stretches;
}

KindCase kind_case(const equipment::Kind& kind, const Workshop& workshop, const route::Means& means,
                   const moist_air::HumidAir& air, const WatchedStretches& watched) {
  KindCase result;
  result.kind = &kind;
  if (const auto isolated = route::isolation(kind, workshop.hazards)) {
    result.refused = Barrier{Rule::isolation, "", isolated->reason, isolated->settle};
    return result;
  }

  if (const route::Carrying carrying = route::carrying(kind, workshop.shop.site);
      !carrying.by_hand_possible) {
    result.refused = Barrier{Rule::lifting, kind.id.text, carrying.warning,
                             "Weigh it, or say in site.toml what a lift table or hoist takes up (lifts)."};
    return result;
  }

  const route::Worklists lists = route::worklists(route::Subject{kind, {}, {}}, means);
  result.piece = drying::oven_piece(kind, removed_parts(lists), workshop.materials);
  if (!result.piece.refusals.empty()) {
    const drying::Refusal& first = result.piece.refusals.front();
    result.refused = Barrier{Rule::limit_unknown, first.part.text, first.reason, first.settle};
    return result;
  }

  std::vector<std::string> reasons;
  std::string kept_out;  // why an oven that could bake it may not
  bool too_weak = false;
  std::optional<drying::Saving> saving;
  for (const shop::Oven& oven : workshop.shop.ovens) {
    if (!fits_inside(kind, oven)) {
      reasons.push_back(
          format("It does not fit into the {} with {} mm of air around it and half the oven free.", oven.name,
                 fixed(clearance.in(millimetre), 0)));
      continue;
    }
    const drying::Wall* wall = workshop.walls.find(oven.wall);
    DAMPWARD_PROMISE(wall != nullptr, "every oven read from a folder has a known wall");
    const drying::LoadUnits one{&result.piece, 1};
    const auto answer = drying::bake_load(oven, *wall, std::span(&one, 1), air);
    if (const auto* bake = std::get_if<drying::BakePlan>(&answer)) {
      const auto& supply = workshop.shop.site.power;
      if (supply && shop::draws(oven) > supply->left()) {
        kept_out = format("the {} takes {} kW, and the supply has {} kW left for it.", oven.name,
                          fixed(shop::draws(oven).in(kilowatt), 1), fixed(supply->left().in(kilowatt), 1));
        reasons.push_back(kept_out);
      } else if (bake->in_oven() <= watched.at(oven.id)) {
        result.ovens.push_back({&oven, *bake, watched.at(oven.id)});
      } else {
        kept_out = format(
            "the {} would need {} h with power and somebody within call in one stretch; the longest is {} h.",
            oven.name, fixed(bake->in_oven().in(hour) + 0.05, 1), fixed(watched.at(oven.id).in(hour), 1));
        reasons.push_back(kept_out);
      }
      continue;
    }
    const drying::NoBake& no = std::get<drying::NoBake>(answer);
    reasons.push_back(format("{}: {}", oven.name, no.reason));
    too_weak = too_weak || no.why != drying::NoBake::Why::oven;
    if (const auto better = drying::saved_by_measuring(result.piece, oven, *wall, air)) {
      if (!saving || better->bake < saving->bake) saving = better;
    }
  }
  std::stable_sort(result.ovens.begin(), result.ovens.end(), [](const OvenChoice& a, const OvenChoice& b) {
    return a.alone.in_oven() < b.alone.in_oven();
  });
  keep_far_ones(result.ovens, workshop.shop.spray);

  if (result.ovens.empty()) {
    const drying::OvenPart* weakest = result.piece.weakest();
    if (weakest != nullptr && weakest->limit->allowed() < air.temperature) {
      result.refused =
          Barrier{Rule::room_above_limit, weakest->id.text,
                  format("{} may become no hotter than {}, and the shop itself is at {}.", weakest->name,
                         celsius(weakest->limit->allowed()), celsius(air.temperature)),
                  weakest->limit->settle};
      return result;
    }
    // Hours or power stand in the way of an oven that could; else the weakest part; else what keeps the first oven from it.
    const std::string why = reasons.empty()     ? "the shop has no oven."
                            : !kept_out.empty() ? kept_out
                            : too_weak          ? weakest_words(result.piece)
                                                : reasons.front();
    result.cold = ColdCase{drying::dry_without_heat(result.piece, air),
                           "No oven here bakes it safely: " + why, reasons, saving};
    return result;
  }
  const drying::OvenPart* weakest = result.piece.weakest();
  if (weakest != nullptr && weakest->limit->from_ignorance) {
    result.doubts.push_back(format("{}: {} is taken as weak ({}) only because nobody measured it; {}",
                                   kind.name, weakest->name, celsius(weakest->limit->limit),
                                   weakest->limit->settle));
  }
  return result;
}

}  // namespace dampward::workbench
