#pragma once

#include <string>
#include <vector>

#include "apps/cli/unit_text.h"
#include "workbench/window_answer.h"

namespace dampward::cli {

// When units may meet lacquer and what ends it, as lines for a terminal.
std::vector<std::string> window_summary(const workbench::WindowAnswer& answer, const UnitText& units);

}  // namespace dampward::cli
