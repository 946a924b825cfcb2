#pragma once

#include "apps/cli/call.h"

namespace dampward::cli {

// solve, for the oven scheduling problem of the literature.
Answer solve_ovens(const Call& call);

}  // namespace dampward::cli
