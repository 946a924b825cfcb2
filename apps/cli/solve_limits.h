#pragma once

#include <chrono>
#include <cstdint>
#include <optional>

#include "apps/cli/asked.h"

namespace dampward::cli {

// How long solve may search, and how.
struct SolveLimits {
  std::int64_t work = 400'000'000;  // about 10 s; used where no limit is asked for
  std::optional<std::chrono::duration<double>> time;
  std::uint64_t seed = 1;
  int threads = 2;
};

// Faults are left with `asked`.
SolveLimits limits_of(Asked& asked);

}  // namespace dampward::cli
