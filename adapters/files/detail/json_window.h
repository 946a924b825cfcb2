#pragma once

#include <optional>
#include <vector>

#include "adapters/files/json_values.h"
#include "core/base/civil_time.h"
#include "workbench/plan.h"

namespace dampward::files::detail {

// One entry of a plan's `windows[]`.
Json window_json(const workbench::Window& window, const WallClock& clock);

// `damp_back[]` of a window.
Json damp_back_json(const std::vector<workbench::DampBackIn>& parts);

// `refused[].remedies[]`: what would make a window.
Json remedies_json(const std::vector<workbench::WindowRemedy>& remedies);

// `loads[].step_down[]`: empty, or how the oven is stepped down.
Json step_down_json(const std::optional<workbench::StepDownHold>& hold);

}  // namespace dampward::files::detail
