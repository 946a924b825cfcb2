#pragma once

#include <string>
#include <vector>

#include "core/base/id.h"
#include "core/quantity/figure.h"

namespace dampward::hazards {

// Steps of the work at which something can hurt someone; `all` holds for every step.
// make_safe, test, strip, clean, mask, load, bake, unload, mix, coat, flash, unmask, touch_up, airing, reassemble, retest, store, waste, transport, all

// One row of the hazard table. Every row ends by deferring to local codes and licensed practice.
struct Hazard {
  HazardId id;
  std::string step;
  std::string name;
  std::string harm;    // what happens, to whom
  std::string effect;  // what it does to the plan's numbers
  std::string guard;
  std::string stop_sign;  // stop work when this is seen
  std::string source;
  Mark mark = Mark::memory;
  std::string defer;
  bool isolate =
      false;  // a part that carries it is never heated, opened or coated: the unit waits for a licensed hand
};

}  // namespace dampward::hazards
