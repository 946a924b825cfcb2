#include "core/drying/no_bake.h"

#include <algorithm>

#include "core/base/format.h"

namespace dampward::drying {
namespace {

std::string whole(double value) {
  return fixed(value, 0);
}

}  // namespace

Weakest weakest_of(std::span<const LoadUnits> load) {
  Weakest answer;
  for (const LoadUnits& units : load) {
    const OvenPart* part = units.piece->weakest();
    if (part && (!answer.part || part->limit->allowed() < answer.part->limit->allowed()))
      answer = {units.piece, part};
  }
  return answer;
}

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

NoBake no_set_point(const Weakest& weakest, const OvenExcess& excess, const shop::Oven& oven,
                    Temperature reach) {
  const PartLimit& limit = *weakest.part->limit;
  const Temperature by_part = limit.allowed() - excess.sum();
  if (by_part < coldest_bake) {
    // A setting below any air of a workshop says nothing to anybody.
    const std::string would_be = by_part < Temperature::celsius(20)
                                     ? "no setting of it would be low enough"
                                     : format("it would have to stand at {} °C, and nobody bakes below 49 °C",
                                              whole(by_part.celsius()));
    return {NoBake::Why::needs_no_heat, weakest.piece->kind, weakest.part->id,
            format("{} of {} may become no hotter than {} °C ({} °C less {} K); oven \"{}\" runs up to {} K "
                   "above its set point, so {}",
                   weakest.part->name, weakest.piece->name, whole(limit.allowed().celsius()),
                   whole(limit.limit.celsius()), whole(limit.margin.in(kelvin)), oven.name,
                   whole(excess.sum().in(kelvin)), would_be),
            limit.settle};
  }
  if (oven.hottest_setting < coldest_bake)
    return oven_refuses(oven, "its hottest setting is below 49 °C", "use another oven");
  if (reach - oven.swing < std::max(coldest_bake, oven.coldest_setting)) {
    return oven_refuses(
        oven, format("its heat ends at {} °C", whole(reach.celsius())),
        "shut the vent further, insulate the walls, or add heat within what the supply gives");
  }
  return oven_refuses(oven,
                      format("its coldest setting, {} °C, is too hot for {} of {}",
                             whole(oven.coldest_setting.celsius()), weakest.part->name, weakest.piece->name),
                      "use an oven that can be set lower");
}

}  // namespace dampward::drying
