#pragma once

#include <vector>

#include "adapters/files/json_values.h"
#include "core/base/civil_time.h"
#include "workbench/mixed_pot.h"

namespace dampward::files::detail {

// The pots of a plan, `mixing[]` of its document.
Json mixing_json(const std::vector<workbench::MixedPot>& pots, const WallClock& clock);

}  // namespace dampward::files::detail
