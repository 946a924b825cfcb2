#pragma once

#include <optional>

#include "core/papers/wall_board.h"
#include "workbench/plan.h"

namespace dampward::workbench {

// The line on one board, its foot left empty; none where nothing is treated and nothing refused.
std::optional<papers::WallBoard> wall_board(const Plan& plan);

}  // namespace dampward::workbench
