#pragma once

#include <optional>
#include <string>

#include "core/quantity/quantity.h"

namespace dampward::workbench {

// One way to make a window for a unit that has none: what to do, whether it helps here, and what it costs in time and place.
struct WindowRemedy {
  std::string way;                           // step_down, warm_cabinet, dried_air, cooler_place or two_passes
  bool opens = false;                        // whether it gives all coats and flashes a place
  std::string words;                         // what to do, or why it does not help
  std::optional<Duration> first_coat_after;  // from the end of the bake; none: it does not help
  std::optional<Duration>
      open_for;          // from the first coat to the end of the last flash; none: no end, or no help
  std::string occupies;  // what it keeps busy meanwhile; empty where it does not help
};

}  // namespace dampward::workbench
