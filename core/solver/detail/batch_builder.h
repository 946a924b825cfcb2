#pragma once

#include "core/solver/detail/batch_state.h"

namespace dampward::solver::detail {

// The first plan: jobs by due time, each into the batch, or to the end of the machine as a batch of its own, that costs least.
// The state holds none of them before and all of them after.
void build(BatchState& state);

}  // namespace dampward::solver::detail
