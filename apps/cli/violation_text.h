#pragma once

#include <string>
#include <vector>

#include "core/referee/judge.h"

namespace dampward::cli {

// "gap_long: …", one line for each broken rule.
std::string violation_text(const std::vector<referee::Violation>& violations);

}  // namespace dampward::cli
