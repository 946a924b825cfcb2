#pragma once

#include <optional>

#include "core/line/answer.h"
#include "core/shop/shop.h"
#include "workbench/plan.h"

namespace dampward::workbench {

// What the timetable takes of the supply in its heaviest minute; none: nobody wrote down what the supply gives.
std::optional<PowerUse> power_report(const line::Problem& problem, const line::Answer& answer,
                                     const shop::Shop& shop, Instant from);

}  // namespace dampward::workbench
