#pragma once

#include <string>

#include "core/base/civil_time.h"
#include "core/base/result.h"

namespace dampward::files {

// The wall clock of an IANA time zone ("Africa/Maputo") with its changes from 1990 to 2060, from the system's tables.
// Faults (place left to the caller): an unknown zone, no tables on this machine.
Result<WallClock> wall_clock_of(const std::string& zone);

}  // namespace dampward::files
