#include "core/drying/measuring.h"

#include "core/drying/oven_model.h"

namespace dampward::drying {
namespace {

enum class Outcome { likely, best };

std::optional<Saving> try_outcome(OvenPiece piece, const shop::Oven& oven, const Wall& wall,
                                  const moist_air::HumidAir& shop_air, const DryRules& rules,
                                  Duration without, Outcome outcome) {
  Saving saving;
  saving.without = without;
  const Temperature needed = coldest_bake + oven_excess(oven).sum() + default_margin(Mark::measured);
  while (true) {
    const LoadUnits load[] = {{&piece, 1}};
    const BakeAnswer answer = bake_load(oven, wall, load, shop_air, rules);
    if (const auto* plan = std::get_if<BakePlan>(&answer)) {
      saving.bake = plan->in_oven();
      saving.set = plan->set;
      if (saving.measure.empty() || saving.saved() <= Duration{}) return std::nullopt;
      return saving;
    }
    const NoBake& refused = std::get<NoBake>(answer);
    if (refused.why != NoBake::Why::needs_no_heat) return std::nullopt;
    OvenPart* part = nullptr;
    for (OvenPart& each : piece.parts) {
      if (each.id == refused.part) part = &each;
    }
    if (!part || !part->limit || !part->limit->from_ignorance) return std::nullopt;
    const auto shown =
        outcome == Outcome::likely ? part->limit->likely_if_measured : part->limit->best_if_measured;
    saving.measure.push_back({part->id, part->name, *shown, needed, part->limit->settle});
    part->limit = as_if_measured(*part->limit, *shown);
  }
}

}  // namespace

std::optional<Saving> saved_by_measuring(const OvenPiece& piece, const shop::Oven& oven, const Wall& wall,
                                         const moist_air::HumidAir& shop_air, const DryRules& rules,
                                         const DryBox& box) {
  if (lamp_fault(oven)) return std::nullopt;
  const Duration without = dry_without_heat(piece, shop_air, box).time;
  if (auto saving = try_outcome(piece, oven, wall, shop_air, rules, without, Outcome::likely)) return saving;
  return try_outcome(piece, oven, wall, shop_air, rules, without, Outcome::best);
}

}  // namespace dampward::drying
