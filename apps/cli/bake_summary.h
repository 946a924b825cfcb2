#pragma once

#include <string>
#include <vector>

#include "apps/cli/unit_text.h"
#include "workbench/bake_answer.h"

namespace dampward::cli {

// What each oven does with a load, as lines for a terminal.
std::vector<std::string> bake_summary(const workbench::BakeAnswer& answer, const UnitText& units);

}  // namespace dampward::cli
