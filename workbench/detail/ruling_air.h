#pragma once

#include <vector>

#include "core/base/result.h"
#include "core/exposure/climate.h"
#include "core/quantity/quantity.h"
#include "core/records/records.h"
#include "core/shop/shop.h"
#include "workbench/plan.h"

namespace dampward::workbench {

// A reading rules for so long: published interval of measuring air at the work (MIL-HDBK-1110, read).
inline constexpr std::chrono::hours reading_rules_for{4};
// A plan's coats reach so far beyond its start: the climate of every month it touches counts.
inline constexpr std::chrono::days plan_reaches{14};

// The air a plan of several days counts on: a reading not older than four hours, or, because the plan runs beyond it, the
// damper of that reading and the 95th-percentile dew point of the months it touches; as warm as the month's 95th percentile
// where a unit must cool, as cool as the reading or the month's mean where it must stay warm. Readings of the spray place go
// before others; of others the dampest rules. Without reading and climate nothing is known of the air, and nothing is planned.
Result<RulingAir> ruling_air(const std::vector<records::AirReading>& readings,
                             const exposure::Climate* climate, Instant from, const shop::Site& site,
                             const shop::SprayPlace& spray);

// The air of the spray place where a dryer keeps it at or under a humidity: its dew point is the one this humidity has at the
// warmest the shop may be, which is the safe side. Without a dryer, or where the day is drier, the same air.
RulingAir dried(const RulingAir& air, const shop::SprayPlace& spray, Pressure pressure);

}  // namespace dampward::workbench
