#pragma once

#include <string>
#include <vector>

#include "core/line/problem.h"

namespace dampward::line {

struct Placement {
  std::string operation;
  Minute start = 0;
  Minute end = 0;  // start + length + breaks in which it paused
  std::vector<std::string> people;
  std::string
      station;  // the station; for a bake, loading or unloading the oven where it has no station of its own
};

struct OvenStay {
  std::string load;
  std::string oven;
  Span occupied;  // first loading to last unloading
};

struct Lateness {
  std::string unit;
  Minute due = 0;
  Minute finish = 0;
  Minute late() const { return finish - due; }
};

// What stands in the way of an operation that found no place.
enum class Obstacle {
  gap,       // a longest gap cannot be kept
  cycle,     // gaps that contradict each other
  skill,     // too few people with the skill
  shift,     // no shift is long enough
  watch,     // nobody within call, or no power, for long enough
  station,   // no station serves it
  capacity,  // it alone asks for more than there is
  solvent,   // solvent in the open and a hot oven too near keep each other away
  horizon,   // the plan's end comes first
  stopped,   // the planner was told to stop before it came to this
};

struct Unplaced {
  std::string unit;       // empty: the load's own
  std::string operation;  // the one that found no place
  Obstacle obstacle = Obstacle::horizon;
  std::string by;      // id of the gap, skill, person, station, oven or capacity in the way
  std::string reason;  // one sentence for a person
};

struct Answer {
  std::vector<Placement> placements;  // in the problem's order of operations
  std::vector<OvenStay> stays;
  std::vector<Lateness> late;      // units that end after their due minute, the latest first
  std::vector<Unplaced> unplaced;  // one a unit that is not in the plan
  Minute finish = 0;               // end of the last operation
  std::vector<std::string>
      order;  // of the units, as a later plan should take them up; not part of what is judged
};

}  // namespace dampward::line
