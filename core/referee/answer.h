#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/referee/problem.h"

// An answer to a timetable problem as docs/formats/timetable.md writes it down.

namespace dampward::referee {

struct Placement {
  std::string operation;
  Minute start = 0, end = 0;
  std::vector<std::string> people;
  std::optional<std::string> station;
};

// A load in its oven.
struct OvenStay {
  std::string load, oven;
  Minute from = 0, to = 0;
};

struct Late {
  std::string unit;
  Minute due = 0, finish = 0;
};

struct Unplaced {
  std::optional<std::string> unit;  // none: an operation of no unit
  std::string operation;
  std::string obstacle;
  std::optional<std::string> by;
  std::string reason;
};

struct PlanAnswer {
  std::vector<Placement> placements;
  std::vector<OvenStay> oven_stays;
  std::vector<Late> late;
  std::vector<Unplaced> unplaced;
  Minute finish = 0;
};

}  // namespace dampward::referee
