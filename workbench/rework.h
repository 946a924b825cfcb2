#pragma once

#include <string>
#include <vector>

#include "core/base/civil_time.h"
#include "core/base/id.h"
#include "core/quantity/quantity.h"
#include "core/quantity/range.h"

namespace dampward::workbench {

// One way on for a unit that was thrown back, with what it adds to the plan as it was, in the shop's own figures.
struct ReworkWay {
  std::string way;    // re_dry, let_dry_and_recoat, let_dry_and_retest or strip_and_re_dry
  std::string words;  // what is done
  Duration
      added;  // running time of what is put in or done again, one after the other; waits for people not counted
  Duration crew;                   // hands-on time of it, all hands together
  Range<Volume> lacquer, thinner;  // for the coats that are put on again
  bool safe = true;
  std::string reason;  // why it is not safe, or what stands against it; empty: nothing
};

// A setback in the log and what the plan does about it: of the safe ways the one with the least hands-on time.
struct Rework {
  UnitId unit;
  std::string event;  // id in the log
  std::string cause;  // its kind
  Instant at;
  std::string rule;  // what decides the ways, in a sentence
  std::vector<ReworkWay> ways;
  std::size_t chosen = 0;  // place in `ways`
};

// A step that stands at another time than it would without the log.
struct MovedStep {
  UnitId unit;
  std::string step;
  Instant was, now;  // its beginnings
  std::string why;   // a sentence
};

}  // namespace dampward::workbench
