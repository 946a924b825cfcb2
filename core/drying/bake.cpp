#include "core/drying/bake.h"

#include <algorithm>

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

struct Weakest {
  const OvenPiece* piece = nullptr;
  const OvenPart* part = nullptr;
};

Weakest weakest_of(std::span<const LoadUnits> load) {
  Weakest answer;
  for (const LoadUnits& units : load) {
    const OvenPart* part = units.piece->weakest();
    if (part && (!answer.part || part->limit->allowed() < answer.part->limit->allowed())) answer = {units.piece, part};
  }
  return answer;
}

std::string whole(double value) { return fixed(value, 0); }

std::optional<NoBake> refusal_of(std::span<const LoadUnits> load) {
  for (const LoadUnits& units : load) {
    if (units.piece->refusals.empty()) continue;
    const Refusal& refusal = units.piece->refusals.front();
    return NoBake{NoBake::Why::refused, units.piece->kind, refusal.part, refusal.reason, refusal.settle};
  }
  return std::nullopt;
}

NoBake oven_refuses(const shop::Oven& oven, const std::string& why, std::string settle) {
  return {NoBake::Why::oven, {}, {}, format("oven \"{}\": {}", oven.name, why), std::move(settle)};
}

// Why no set point was found.
NoBake too_weak(const Weakest& weakest, const OvenExcess& excess, const shop::Oven& oven, Temperature reach) {
  const PartLimit& limit = *weakest.part->limit;
  const Temperature by_part = limit.allowed() - excess.sum();
  if (by_part < coldest_bake) {
    return {NoBake::Why::needs_no_heat, weakest.piece->kind, weakest.part->id,
            format("{} of {} may become no hotter than {} °C ({} °C less {} K); oven \"{}\" runs up to {} K above its set point, so "
                   "it would have to stand at {} °C, and nobody bakes below 49 °C",
                   weakest.part->name, weakest.piece->name, whole(limit.allowed().celsius()), whole(limit.limit.celsius()),
                   whole(limit.margin.in(kelvin)), oven.name, whole(excess.sum().in(kelvin)), whole(by_part.celsius())),
            limit.settle};
  }
  if (oven.hottest_setting < coldest_bake) return oven_refuses(oven, "its hottest setting is below 49 °C", "use another oven");
  if (reach - oven.swing < std::max(coldest_bake, oven.coldest_setting)) {
    return oven_refuses(oven, format("its heat ends at {} °C", whole(reach.celsius())),
                        "shut the vent further, insulate the walls, or add heat within what the supply gives");
  }
  return oven_refuses(oven, format("its coldest setting, {} °C, is too hot for {} of {}", whole(oven.coldest_setting.celsius()),
                                   weakest.part->name, weakest.piece->name),
                      "use an oven that can be set lower");
}

AirMotion motion_in(const shop::Oven& oven) { return oven.air_moves ? AirMotion::moving : AirMotion::still; }

std::vector<OvenLump> lumps_of(std::span<const LoadUnits> load, AirMotion motion, Side side) {
  std::vector<OvenLump> lumps;
  for (const LoadUnits& units : load) {
    const OvenPiece& piece = *units.piece;
    const bool safe = side == Side::safe;
    const Range<Duration> whole_unit = piece.time_constant(motion);
    const HeatCapacity capacity = safe ? piece.capacity.high : piece.capacity.typical;
    OvenLump lump{capacity, capacity / (safe ? whole_unit.high : whole_unit.typical), units.count, std::nullopt};
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
  for (const TemperatureCurve::Point& point : curve.points()) points.push_back({wait + point.time, point.temperature});
  points.push_back({points.back().time + hold, points.back().temperature});
  return TemperatureCurve(std::move(points));
}

std::string stays_wet(const OvenPart& part, const PartBake& outcome) {
  if (!part.unknown.empty()) return part.unknown + ": weigh one before and after a bake";
  if (outcome.dryness == Dryness::dry) return {};
  return format("its surface is dry, but up to {} % of what could leave stays inside; for a winding, insulation readings that rise and "
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
    return part.asked && progress ? std::max(seams, hold_needed(*part.body, *progress, side)) : seams;
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

void judge(PartBake& outcome, const Watched& watched, const BakePlan& plan, const moist_air::HumidAir& shop_air, const DryRules& rules) {
  const OvenPart& part = *watched.part;
  if (part.body) {
    outcome.residual = residual_after(*part.body, *watched.slowest, plan.hold, Side::safe);
    outcome.residual_nominal = residual_after(*part.body, *watched.typical, plan.hold, Side::typical);
    outcome.moisture = sorption_after(*part.body, shop_air, moist_air::brought_to(shop_air, plan.set), *outcome.residual);
    // The hold was solved for this share, so equality only misses by rounding.
    if (*outcome.residual > rules.porous_residual + 1e-6) outcome.dryness = Dryness::damp_inside;
  } else if (part.target != DryTarget::surface) {
    outcome.dryness = part.asked ? Dryness::unknown : Dryness::damp_inside;
  }
  outcome.words = stays_wet(part, outcome);
}

}  // namespace

BakeAnswer bake_load(const shop::Oven& oven, const Wall& wall, std::span<const LoadUnits> load, const moist_air::HumidAir& shop_air,
                     const DryRules& rules) {
  DAMPWARD_PROMISE(!load.empty(), "a bake has a load");
  if (auto refused = refusal_of(load)) return *refused;
  if (auto fault = lamp_fault(oven)) return oven_refuses(oven, *fault, "measure the distance and read the beam angle off the lamp");

  const Weakest weakest = weakest_of(load);
  DAMPWARD_PROMISE(weakest.part != nullptr, "a piece without refusals has a limit for every part");
  const OvenExcess excess = oven_excess(oven);
  const OvenHeat worst_heat = oven_heat(oven, wall, Loss::highest), usual_heat = oven_heat(oven, wall, Loss::typical);
  const Temperature reach = reachable(worst_heat, shop_air.temperature);
  const auto set = highest_set_point(weakest.part->limit->allowed(), excess, oven, reach);
  if (!set) return too_weak(weakest, excess, oven, reach);

  const AirMotion motion = motion_in(oven);
  const Temperature coldest_place = set->set - oven.evenness;
  const auto slow_heat = heat_up(worst_heat, shop_air.temperature, coldest_place, lumps_of(load, motion, Side::safe));
  const auto usual = heat_up(usual_heat, shop_air.temperature, set->set, lumps_of(load, motion, Side::typical));
  if (!slow_heat || !usual) return oven_refuses(oven, "it does not get this load warm in two days", "bake fewer units at once");
  const auto slow_wet = wet_start(load, oven, worst_heat, set->set, shop_air, rules.driest_needed, Side::safe);
  const auto usual_wet = wet_start(load, oven, usual_heat, set->set, shop_air, rules.driest_needed, Side::typical);
  const RelativeHumidity humidity = moist_air::brought_to(shop_air, set->set).humidity;
  if (!slow_wet || !usual_wet) {
    return oven_refuses(oven, format("the shop's air brought to {} °C still has {} % humidity, and porous parts need {} % or less",
                                     whole(set->set.celsius()), whole(humidity.percent()), whole(rules.driest_needed.percent())),
                        "wait for drier air, or feed the oven dried air");
  }
  const Warming slowest{Side::safe, *slow_heat, *slow_wet}, typical{Side::typical, *usual, *usual_wet};

  BakePlan plan;
  plan.set = set->set;
  plan.bound = set->bound;
  plan.excess = excess;
  plan.weakest_kind = weakest.piece->kind;
  plan.weakest_part = weakest.part->id;
  plan.plateau = slow_wet->time;
  plan.warm_up = slow_heat->warm_up;
  plan.rule = rule_hours(set->set);
  plan.oven_humidity = humidity;
  plan.water = slow_wet->water;
  const Temperature peak = set->set + excess.sum();
  std::vector<Watched> watched;
  for (std::size_t i = 0; i < load.size(); ++i) {
    for (const OvenPart& part : load[i].piece->parts) {
      PartBake outcome = first_words(*load[i].piece, part, peak);
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
  for (std::size_t i = 0; i < watched.size(); ++i) judge(plan.parts[i], watched[i], plan, shop_air, rules);
  for (std::size_t i = 0; i < load.size(); ++i) {
    const OvenPiece& piece = *load[i].piece;
    const Duration rest = plan.in_oven() - usual_wet->time - usual->warm_up;
    const Range<Duration> cooling = piece.time_constant(AirMotion::still);
    plan.pieces.push_back({piece.kind, load[i].count, after(usual_wet->time, usual->whole[i], rest),
                           after(usual_wet->time, usual->slow[i], rest), cooling,
                           piece.heavy_time_constant(AirMotion::still).value_or(cooling)});
  }
  plan.energy = usual->energy + usual_wet->water * evaporation_heat(set->set) +
                usual_heat.loss * (set->set - shop_air.temperature) * (plan.in_oven() - usual->warm_up);
  return plan;
}

}  // namespace dampward::drying
