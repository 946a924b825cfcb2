#pragma once

#include <functional>
#include <span>

namespace dampward::cli {

// Runs all tasks at the same time, each but the last on a thread of its own, and returns when all are done.
void side_by_side(std::span<const std::function<void()>> tasks);

}  // namespace dampward::cli
