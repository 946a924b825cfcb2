#pragma once

#include <string>
#include <vector>

#include "apps/cli/unit_text.h"
#include "workbench/air_answer.h"

namespace dampward::cli {

// Fire, people and the air both need, as lines for a terminal.
std::vector<std::string> air_summary(const workbench::AirAnswer& answer, const UnitText& units);

}  // namespace dampward::cli
