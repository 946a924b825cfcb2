#pragma once

#include <string>
#include <vector>

#include "apps/cli/unit_text.h"
#include "workbench/exposure_report.h"

namespace dampward::cli {

// The climate, what it does to each way of storing, and what to treat first, in lines of at most 80 columns.
std::vector<std::string> exposure_summary(const workbench::ExposureReport& report, const UnitText& units);

}  // namespace dampward::cli
