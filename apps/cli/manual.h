#pragma once

#include <string>

#include "apps/cli/description.h"

namespace dampward::cli {

// The manual page in the man macros of roff, in plain ASCII.
std::string manual(const Description& all, const std::string& version);

}  // namespace dampward::cli
