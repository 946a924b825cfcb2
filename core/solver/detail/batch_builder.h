#pragma once

#include "core/solver/detail/batch_state.h"

namespace dampward::solver::detail {

// The first plan: jobs by due time, each into one of the latest batches, or to the end of a machine as a batch of its
// own, where it costs least.
// The state holds none of them before and all of them after.
void build(BatchState& state);

}  // namespace dampward::solver::detail
