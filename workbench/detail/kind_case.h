#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/drying/bake.h"
#include "core/drying/measuring.h"
#include "core/drying/no_heat.h"
#include "core/drying/oven_piece.h"
#include "core/moist_air/humid_air.h"
#include "core/route/route.h"
#include "workbench/plan.h"
#include "workbench/workshop.h"

namespace dampward::workbench {

// A load fills no more than half the oven, boxes and all, with so much air between them and to the walls (NFPA 86, from
// memory; hazard table, crowded oven).
inline constexpr double fullest = 0.5;
inline constexpr Length clearance = 50 * millimetre;

// One oven that can bake a kind, and the bake of one unit of it alone.
struct OvenChoice {
  const shop::Oven* oven = nullptr;
  drying::BakePlan alone;
  Duration watched;  // the longest stretch in which it has power and somebody within call
};

// Drying without the oven, and what would change that.
struct ColdCase {
  drying::NoHeatPlan plan;
  std::string reason;
  std::vector<std::string> by_oven;  // why each oven does not bake it
  std::optional<drying::Saving> saving;
};

// What holds for every unit of one kind in this shop, worked out once. Exactly one of: refused, some ovens, cold.
struct KindCase {
  const equipment::Kind* kind = nullptr;
  std::optional<Barrier> refused;
  drying::OvenPiece piece;
  std::vector<OvenChoice> ovens;  // quickest first
  std::optional<ColdCase> cold;
  std::vector<std::string>
      doubts;  // what the plan says aside: limits that are low from ignorance, ovens left out
};

// Whether one unit goes in with air around it and leaves half the oven free.
bool fits_inside(const equipment::Kind& kind, const shop::Oven& oven);

// Whether the oven may not be hot while solvent is about: the same room, or within 6.1 m, or nobody wrote down how far.
bool near_solvent(const shop::Oven& oven, const shop::SprayPlace& spray);

// The longest time in one piece that an oven has power while somebody with the oven skill is on shift within call.
using WatchedStretches = std::map<OvenId, Duration>;
WatchedStretches watched_stretches(const shop::Shop& shop, Instant from);

KindCase kind_case(const equipment::Kind& kind, const Workshop& workshop, const route::Means& means,
                   const moist_air::HumidAir& air, const WatchedStretches& watched);

}  // namespace dampward::workbench
