#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/history/event.h"

namespace dampward::history {

// One doing of one step.
struct StepRecord {
  UnitId unit;
  std::string step;
  int round = 0;  // setbacks of the unit before it
  Instant started;
  std::optional<Instant> finished;  // none: it runs
  PersonId person;
  OvenId oven;
  std::string station;
  std::string event;  // id of the event that told of the beginning
};

// What threw a unit back: its window was missed, or it failed its retest.
struct Setback {
  UnitId unit;
  Kind kind = Kind::window_missed;
  Instant at;
  std::string event, why;
};

struct Absence {
  PersonId person;
  Instant from, until;
  std::string event;
};

struct Outage {
  OvenId oven;
  Instant from, until;
  std::string event;
};

struct History {
  std::vector<StepRecord> steps;  // in order of their beginning
  std::vector<Setback> setbacks;  // in order of time
  std::vector<Absence> absences;
  std::vector<Outage> outages;
};

// The events read together, each at its own time whatever the order they were noted in. Corrected and withdrawn events do not
// count. Problems, all at once and each naming its events: faults of single events, an id used twice, a correction of nothing,
// a step that began twice or ended twice without a setback between (two people noted it), one that ended before it began or
// never began.
Result<History> read_history(std::span<const Event> events);

}  // namespace dampward::history
