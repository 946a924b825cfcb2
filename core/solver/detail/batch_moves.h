#pragma once

#include "core/solver/detail/batch_state.h"
#include "core/solver/detail/random.h"

namespace dampward::solver::detail {

// Changes the plan a little, at random: a job to another batch or one of its own, two jobs exchanged, a batch elsewhere, two
// batches exchanged, two batches made one. Not retimed yet. False: what was drawn is not possible, and nothing has changed.
bool random_move(BatchState& state, Random& random);

}  // namespace dampward::solver::detail
