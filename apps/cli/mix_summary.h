#pragma once

#include <string>
#include <vector>

#include "apps/cli/unit_text.h"
#include "workbench/mix_answer.h"

namespace dampward::cli {

// What to mix, for whom and how thick, as lines for a terminal.
std::vector<std::string> mix_summary(const workbench::MixAnswer& answer, const UnitText& units);

}  // namespace dampward::cli
