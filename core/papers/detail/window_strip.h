#pragma once

#include <functional>
#include <string>
#include <vector>

#include "core/base/civil_time.h"
#include "core/papers/pen.h"

namespace dampward::papers {

struct StripTimes {
  Instant leaves, opens, shuts, flash_ends;
  std::vector<Instant> starts, ends;  // of the coats
};
struct StripWords {
  std::string opens, shuts, flash_off, spare;
  std::function<std::string(int)> coat;
};

// The warm window as time between two walls: coats, last flash, minutes to spare. Gives where it ends.
double window_strip(Pen& pen, double x, double y, double width, const StripTimes& times,
                    const StripWords& words, const WallClock& clock);

}  // namespace dampward::papers
