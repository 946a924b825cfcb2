#pragma once

#include <string>

#include "core/base/civil_time.h"
#include "core/papers/words.h"
#include "core/quantity/quantity.h"

namespace dampward::papers {

// Which sentence of the tables names a step of a route.
struct StepKey {
  std::string code;         // "coat", "open" …, as `data/messages/steps.csv` ends its keys
  int turn = 0, turns = 0;  // which coat, of how many; 0: there is only one
};

// What is done, in the language of the sheet.
std::string step_name(const Words& words, const StepKey& key);
// Why, as a sentence without its first word; empty: the name says it.
std::string step_reason(const Words& words, const StepKey& key);

// "Mon", "lun" …
std::string weekday_name(const Words& words, Instant time, const WallClock& clock);
// "07:30"
std::string clock_of(Instant time, const WallClock& clock);
// "2 h 05 min", never parted at a line's end; rounded up to whole minutes.
std::string time_taken(Duration time);

}  // namespace dampward::papers
