#pragma once

#include <string>
#include <vector>

#include "apps/cli/toned.h"
#include "apps/cli/unit_text.h"
#include "workbench/plan.h"

namespace dampward::cli {

// What runs when, what is tight, short and unsafe, and why: at most 40 lines, more where there are fewer than 80 columns.
// Where more would have to be said, the last line of a part says how much and where to read it.
std::vector<Line> plan_summary(const workbench::Plan& plan, const UnitText& units, std::size_t width);

}  // namespace dampward::cli
