#pragma once

#include <string>
#include <vector>

#include "workbench/selfcheck.h"

namespace dampward::cli {

// How many published values each model meets, and every one it misses, in lines of at most 80 columns.
std::vector<std::string> selfcheck_summary(const workbench::SelfCheck& check);

}  // namespace dampward::cli
