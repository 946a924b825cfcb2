#include "workbench/detail/power_report.h"

#include <algorithm>
#include <map>

#include "core/line/calendar.h"
#include "workbench/detail/plan_report.h"

namespace dampward::workbench {
namespace {

std::int64_t watts_of(const line::Operation& operation) {
  std::int64_t watts = 0;
  for (const line::Demand& demand : operation.demands) {
    if (demand.capacity == power_capacity) watts += demand.amount;
  }
  return watts;
}

}  // namespace

std::optional<PowerUse> power_report(const line::Problem& problem, const line::Answer& answer,
                                     const shop::Shop& shop, Instant from) {
  if (!shop.site.power) return std::nullopt;
  const Placed placed = placed_operations(answer);
  std::map<line::Minute, std::int64_t> changes;
  for (const line::Operation& operation : problem.operations) {
    const auto place = placed.find(operation.id);
    const std::int64_t watts = watts_of(operation);
    if (watts == 0 || place == placed.end()) continue;
    // An oven stays hot until its last unit is out.
    line::Minute end = place->second->end;
    for (const line::Load& load : problem.loads) {
      if (load.bake != operation.id) continue;
      for (const line::Member& member : load.members) {
        const auto out = placed.find(member.unloading);
        if (out != placed.end()) end = std::max(end, out->second->end);
      }
    }
    changes[place->second->start] += watts;
    changes[end] -= watts;
  }
  PowerUse use{shop.site.power->gives, shop.site.power->always_on, shop.site.power->always_on, std::nullopt};
  std::int64_t on = 0, most = 0;
  for (const auto& [minute, change] : changes) {
    on += change;
    if (on <= most) continue;
    most = on;
    use.peak = use.always_on + static_cast<double>(most) * watt;
    use.peak_at = line::instant_of(minute, from);
  }
  return use;
}

}  // namespace dampward::workbench
