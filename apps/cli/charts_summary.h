#pragma once

#include <string>
#include <vector>

#include "workbench/charts.h"

namespace dampward::cli {

// What charts there are, for what air and lacquer, each with its worked example; `place`: where they were written, or empty.
std::vector<std::string> charts_summary(const workbench::WallCharts& charts, const std::string& place);

}  // namespace dampward::cli
