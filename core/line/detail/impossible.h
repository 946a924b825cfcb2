#pragma once

#include "core/base/problem.h"
#include "core/line/problem.h"

namespace dampward::line::detail {

// What no timetable can mend: rings of shortest gaps, loads too large for each of their ovens, bakes shorter than a member
// needs, settings a member does not stand, fixed work in no certain oven. Promise of the caller: all names and figures
// are sound.
Problems impossible(const Problem& problem);

}  // namespace dampward::line::detail
