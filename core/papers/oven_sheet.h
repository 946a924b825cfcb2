#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/civil_time.h"
#include "core/papers/measure.h"
#include "core/papers/words.h"
#include "core/quantity/temperature_curve.h"

namespace dampward::papers {

// What hangs at the oven door for one load.
struct OvenSheet {
  std::string load, oven, shop;
  std::string weakest, weakest_unit;  // the part that sets it, and the unit it is in
  Temperature set;
  Temperature peak, limit;  // of the weakest part; the limit is its own, before the margin
  Temperature holds_from;   // what the thermometer must read for the hold to start
  TemperatureStep spread;   // place and thermostat, either way
  Duration hold, hold_nominal;
  std::optional<Duration> rule;  // of the trade; none: it says nothing here
  struct Out {
    std::string unit, kind;
    Instant at;
  };
  std::vector<Out> units;  // in the order they leave
  Instant in, hold_starts, hold_ends;
  std::optional<Temperature> stepped_to;  // none: units leave hot
  TemperatureCurve slowest;  // what the thermometer amid the slowest unit reads, from closing the door
  std::string stays_damp;    // names of what the bake leaves damp inside; empty: nothing
  WallClock clock{std::chrono::seconds(0)};
  std::string plan;  // id and time, as the foot shows it
};

// One page: the set point, the moments, limit and hold, the curve to follow, clock times with what to expect and what to do
// when it is otherwise.
Page oven_sheet(const OvenSheet& sheet, const Paper& paper, const Words& words, const Measure& measure);

}  // namespace dampward::papers
