#include "core/drying/bake.h"

#include <algorithm>
#include <utility>

#include "core/base/format.h"
#include "core/base/promise.h"
#include "core/drying/heat_up.h"
#include "core/drying/oven_model.h"
#include "core/drying/part_drying.h"
#include "core/drying/surface_drying.h"
#include "core/drying/wet_start.h"

namespace dampward::drying {
namespace {

using equipment::DryTarget;

std::string whole(double value) {
  return fixed(value, 0);
}

std::vector<OvenLump> lumps_of(std::span<const LoadUnits> load, AirMotion motion, Side side) {
  std::vector<OvenLump> lumps;
  for (const LoadUnits& units : load) {
    const OvenPiece& piece = *units.piece;
    const bool safe = side == Side::safe;
    const Range<Duration> whole_unit = piece.time_constant(motion);
    const HeatCapacity capacity = safe ? piece.capacity.high : piece.capacity.typical;
    OvenLump lump{capacity, capacity / (safe ? whole_unit.high : whole_unit.typical), units.count,
                  std::nullopt};
    if (const auto& heavy = piece.heavy_time_constant(motion); heavy && heavy->typical > whole_unit.typical) {
      lump.slow = safe ? heavy->high : heavy->typical;
    }
    lumps.push_back(lump);
  }
  return lumps;
}

// The same curve shifted by the wet start, in which the load counts as cold (the safe side).
TemperatureCurve after(Duration wait, const TemperatureCurve& curve, Duration hold) {
  std::vector<TemperatureCurve::Point> points{{Duration{}, curve.points().front().temperature}};
  for (const TemperatureCurve::Point& point : curve.points())
    points.push_back({wait + point.time, point.temperature});
  points.push_back({points.back().time + hold, points.back().temperature});
  return TemperatureCurve(std::move(points));
}

std::string stays_wet(const OvenPart& part, const PartBake& outcome) {
  if (!part.unknown.empty()) return part.unknown + ": weigh one before and after a bake";
  if (outcome.dryness == Dryness::dry) return {};
  return format(
      "its surface is dry, but up to {} % of what could leave stays inside; for a winding, insulation "
      "readings that rise and "
      "then stay steady decide",
      whole(100 * *outcome.residual));
}

// One warming of the load, typical or at its slowest.
struct Warming {
  Side side;
  HeatUp heat;
  WetStart wet;

  std::optional<Progress> progress_of(const OvenPart& part, std::size_t index) const {
    if (!part.body) return std::nullopt;
    return progress_after(*part.body, part.in_heavy_lump ? heat.slow[index] : heat.whole[index], side);
  }
  Duration hold_of(const OvenPart& part, const std::optional<Progress>& progress) const {
    const Duration seams = part.traps_damp ? wet.traps : Duration{};
    return part.asked && progress ? std::max(seams, hold_needed(*part.body, *progress)) : seams;
  }
};

// A part on its way through one bake.
struct Watched {
  const OvenPart* part;
  std::optional<Progress> slowest, typical;
};

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

void judge(PartBake& outcome, const Watched& watched, const BakePlan& plan,
           const moist_air::HumidAir& shop_air, const DryRules& rules) {
  const OvenPart& part = *watched.part;
  if (part.body) {
    outcome.residual = residual_after(*part.body, *watched.slowest, plan.hold);
    outcome.residual_nominal = residual_after(*part.body, *watched.typical, plan.hold);
    outcome.moisture =
        sorption_after(*part.body, shop_air, moist_air::brought_to(shop_air, plan.set), *outcome.residual);
    // The hold was solved for this share, so equality only misses by rounding.
    if (*outcome.residual > rules.porous_residual + 1e-6) outcome.dryness = Dryness::damp_inside;
  } else if (part.target != DryTarget::surface) {
    outcome.dryness = part.asked ? Dryness::unknown : Dryness::damp_inside;
  }
  outcome.words = stays_wet(part, outcome);
}

// Both ways of warming: typical figures at the set point, and the slow end of every range at the coldest place.
std::optional<std::pair<Warming, Warming>> warmings(const shop::Oven& oven, const Wall& wall,
                                                    std::span<const LoadUnits> load, Temperature set,
                                                    const moist_air::HumidAir& shop_air,
                                                    const DryRules& rules) {
  const AirMotion motion = oven.air_moves ? AirMotion::moving : AirMotion::still;
  const auto warming = [&](Side side, Loss loss, Temperature air) -> std::optional<Warming> {
    const OvenHeat heat = oven_heat(oven, wall, loss);
    auto warm = heat_up(heat, shop_air.temperature, air, lumps_of(load, motion, side));
    if (!warm) return std::nullopt;
    return Warming{side, std::move(*warm),
                   wet_start(load, oven, heat, set, shop_air, rules.driest_needed, side)};
  };
  auto typical = warming(Side::typical, Loss::typical, set);
  auto slowest = warming(Side::safe, Loss::highest, set - oven.evenness);
  if (!typical || !slowest) return std::nullopt;
  return std::pair{std::move(*typical), std::move(*slowest)};
}

// Every part's peak and the hold it asks for; the plan's hold is the longest of them.
std::vector<Watched> ask_parts(BakePlan& plan, std::span<const LoadUnits> load, const Warming& typical,
                               const Warming& slowest) {
  std::vector<Watched> watched;
  for (std::size_t i = 0; i < load.size(); ++i) {
    for (const OvenPart& part : load[i].piece->parts) {
      PartBake outcome = first_words(*load[i].piece, part, plan.set + plan.excess.sum());
      watched.push_back({&part, slowest.progress_of(part, i), typical.progress_of(part, i)});
      outcome.needs = slowest.hold_of(part, watched.back().slowest);
      outcome.needs_nominal = typical.hold_of(part, watched.back().typical);
      if (outcome.needs > plan.hold) {
        plan.hold = outcome.needs;
        plan.slowest_kind = outcome.kind;
        plan.slowest_part = outcome.part;
      }
      plan.hold_nominal = std::max(plan.hold_nominal, outcome.needs_nominal);
      plan.parts.push_back(std::move(outcome));
    }
  }
  return watched;
}

PieceBake piece_bake(const LoadUnits& units, std::size_t index, const Warming& typical, Duration in_oven) {
  const OvenPiece& piece = *units.piece;
  const Duration rest = in_oven - typical.wet.time - typical.heat.warm_up;
  const Range<Duration> cooling = piece.time_constant(AirMotion::still);
  return {piece.kind,
          units.count,
          after(typical.wet.time, typical.heat.whole[index], rest),
          after(typical.wet.time, typical.heat.slow[index], rest),
          cooling,
          piece.heavy_time_constant(AirMotion::still).value_or(cooling)};
}

}  // namespace

BakeAnswer bake_load(const shop::Oven& oven, const Wall& wall, std::span<const LoadUnits> load,
                     const moist_air::HumidAir& shop_air, const DryRules& rules) {
  DAMPWARD_PROMISE(!load.empty(), "a bake has a load");
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
  const auto both = warmings(oven, wall, load, set->set, shop_air, rules);
  if (!both)
    return oven_refuses(oven, "it does not get this load warm in two days", "bake fewer units at once");
  const auto& [typical, slowest] = *both;

  BakePlan plan;
  plan.set = set->set;
  plan.bound = set->bound;
  plan.excess = excess;
  plan.weakest_kind = weakest.piece->kind;
  plan.weakest_part = weakest.part->id;
  plan.plateau = slowest.wet.time;
  plan.warm_up = slowest.heat.warm_up;
  plan.rule = rule_hours(set->set);
  plan.oven_humidity = humidity;
  plan.water = slowest.wet.water;
  const std::vector<Watched> watched = ask_parts(plan, load, typical, slowest);
  for (std::size_t i = 0; i < watched.size(); ++i) judge(plan.parts[i], watched[i], plan, shop_air, rules);
  for (std::size_t i = 0; i < load.size(); ++i)
    plan.pieces.push_back(piece_bake(load[i], i, typical, plan.in_oven()));
  const HeatConductance loss = oven_heat(oven, wall, Loss::typical).loss;
  plan.energy = typical.heat.energy + typical.wet.water * evaporation_heat(set->set) +
                loss * (set->set - shop_air.temperature) * (plan.in_oven() - typical.heat.warm_up);
  return plan;
}

}  // namespace dampward::drying
