#include "core/drying/bake.h"

#include <algorithm>
#include <utility>

#include "core/base/format.h"
#include "core/base/promise.h"
#include "core/drying/load_run.h"
#include "core/drying/oven_model.h"

namespace dampward::drying {
namespace {

using equipment::DryTarget;

// As dry as a shop in a hot damp place ever becomes, an estimate.
constexpr RelativeHumidity driest_room = RelativeHumidity::percent(20);

std::string whole(double value) {
  return fixed(value, 0);
}

std::string stays_wet(const OvenPart& part, const PartBake& outcome) {
  if (!part.unknown.empty()) return part.unknown + ": weigh one before and after a bake";
  if (outcome.dryness == Dryness::dry) return {};
  return format(
      "its surface is dry, but of what could leave its inside only {} % does, and up to {} % stays inside; "
      "for a "
      "winding, insulation readings that rise and then stay steady decide",
      whole(100 * (1 - *outcome.residual)), whole(100 * *outcome.residual));
}

PartBake first_words(const OvenPiece& piece, const OvenPart& part, Temperature peak) {
  PartBake outcome;
  outcome.kind = piece.kind;
  outcome.part = part.id;
  outcome.name = part.name;
  outcome.peak = peak;
  outcome.limit = part.limit->limit;
  outcome.margin = part.limit->limit - peak;
  outcome.target = part.target;
  outcome.asked = part.asked;
  return outcome;
}

PartBake part_bake(const OvenPiece& piece, const OvenPart& part, const PartRun& slowest,
                   const PartRun& typical, const BakePlan& plan, const DryRules& rules) {
  PartBake outcome = first_words(piece, part, plan.set + plan.excess.sum());
  outcome.needs = slowest.needs;
  outcome.needs_nominal = typical.needs;
  if (part.body) {
    outcome.residual = slowest.residual;
    outcome.residual_nominal = typical.residual;
    outcome.moisture = slowest.moisture;
    // The hold was solved for this share, so equality only misses by rounding.
    if (*outcome.residual > rules.porous_residual + 1e-6) outcome.dryness = Dryness::damp_inside;
  } else if (part.target != DryTarget::surface) {
    outcome.dryness = part.asked ? Dryness::unknown : Dryness::damp_inside;
  }
  outcome.words = stays_wet(part, outcome);
  return outcome;
}

// Typical figures at the set point, and the slow end of every range at the coldest place for the hold.
struct BothRuns {
  LoadRun typical, slowest;
};
std::optional<BothRuns> both_runs(const shop::Oven& oven, const Wall& wall, std::span<const LoadUnits> load,
                                  Temperature set, const moist_air::HumidAir& shop_air,
                                  const DryRules& rules) {
  // In a damp room the load comes warmer from its wet bulb and has more to lose, so that a tenth of it is reached a
  // little sooner. A room may dry out while the oven runs: nobody counts on its damp, and the hold is that of the slower
  // of the two.
  moist_air::HumidAir dry = shop_air;
  dry.humidity = std::min(dry.humidity, driest_room);
  const Temperature coldest = set - oven.evenness;
  const auto in_dry_room = run_load(oven, wall, load, dry, {coldest, Side::safe, rules, {}, {}});
  if (!in_dry_room) return std::nullopt;
  auto slowest = run_load(oven, wall, load, shop_air, {coldest, Side::safe, rules, {}, in_dry_room->hold});
  if (!slowest) return std::nullopt;
  for (std::size_t i = 0; i < load.size(); ++i) {
    for (std::size_t j = 0; j < slowest->parts[i].size(); ++j) {
      PartRun& part = slowest->parts[i][j];
      part.needs = std::max(part.needs, in_dry_room->parts[i][j].needs);
    }
  }
  auto typical = run_load(oven, wall, load, shop_air, {set, Side::typical, rules, slowest->until_dry(), {}});
  if (!typical) return std::nullopt;
  return BothRuns{std::move(*typical), std::move(*slowest)};
}

void tell_parts(BakePlan& plan, std::span<const LoadUnits> load, const BothRuns& runs,
                const DryRules& rules) {
  Duration longest;
  for (std::size_t i = 0; i < load.size(); ++i) {
    const OvenPiece& piece = *load[i].piece;
    for (std::size_t j = 0; j < piece.parts.size(); ++j) {
      plan.parts.push_back(
          part_bake(piece, piece.parts[j], runs.slowest.parts[i][j], runs.typical.parts[i][j], plan, rules));
      const PartBake& told = plan.parts.back();
      if (told.needs > longest) {
        longest = told.needs;
        plan.slowest_kind = told.kind;
        plan.slowest_part = told.part;
      }
    }
    const Range<Duration> cooling = piece.time_constant(AirMotion::still);
    plan.pieces.push_back({piece.kind, load[i].count, runs.typical.shell[i], runs.typical.inner[i], cooling,
                           piece.heavy_time_constant(AirMotion::still).value_or(cooling)});
  }
}

// One order for one load, whoever lists it: sums then come out the same to the last digit.
std::vector<LoadUnits> in_order(std::span<const LoadUnits> load) {
  std::vector<LoadUnits> sorted(load.begin(), load.end());
  std::stable_sort(sorted.begin(), sorted.end(), [](const LoadUnits& a, const LoadUnits& b) {
    return a.piece->kind.text < b.piece->kind.text;
  });
  return sorted;
}

}  // namespace

BakeAnswer bake_load(const shop::Oven& oven, const Wall& wall, std::span<const LoadUnits> given,
                     const moist_air::HumidAir& shop_air, const DryRules& rules) {
  DAMPWARD_PROMISE(!given.empty(), "a bake has a load");
  const std::vector<LoadUnits> load = in_order(given);
  if (auto refused = refusal_of(load)) return *refused;
  if (auto fault = lamp_fault(oven)) {
    return oven_refuses(oven, *fault, "measure the distance and read the beam angle off the lamp");
  }
  const Weakest weakest = weakest_of(load);
  DAMPWARD_PROMISE(weakest.part != nullptr, "a piece without refusals has a limit for every part");
  const OvenExcess excess = oven_excess(oven);
  const Temperature reach = reachable(oven_heat(oven, wall, Loss::highest), shop_air.temperature);
  const auto set = highest_set_point(weakest.part->limit->allowed(), excess, oven, reach);
  if (!set) return no_set_point(weakest, excess, oven, reach);

  const RelativeHumidity humidity = moist_air::brought_to(shop_air, set->set).humidity;
  if (humidity >= rules.driest_needed) {
    return oven_refuses(
        oven,
        format(
            "the shop's air brought to {} °C still has {} % humidity, and porous parts need less than {} %",
            whole(set->set.celsius()), whole(humidity.percent()), whole(rules.driest_needed.percent())),
        "wait for drier air, or feed the oven dried air");
  }
  const auto runs = both_runs(oven, wall, load, set->set, shop_air, rules);
  if (!runs)
    return oven_refuses(oven, "it does not get this load warm in two days and dry in two years",
                        "bake fewer units at once, or ask less of the part that dries last");

  BakePlan plan;
  plan.set = set->set;
  plan.bound = set->bound;
  plan.excess = excess;
  plan.weakest_kind = weakest.piece->kind;
  plan.weakest_part = weakest.part->id;
  plan.plateau = runs->slowest.plateau;
  plan.warm_up = runs->slowest.warm_up;
  plan.hold = runs->slowest.hold;
  plan.hold_nominal = runs->typical.hold;
  plan.rule = rule_hours(set->set);
  plan.oven_humidity = humidity;
  plan.dampest = runs->slowest.dampest;
  plan.water = runs->slowest.surface_water;
  plan.inside_water = runs->typical.inside_water;
  plan.energy = runs->typical.energy;
  tell_parts(plan, load, *runs, rules);
  return plan;
}

}  // namespace dampward::drying
