#pragma once

#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/civil_time.h"
#include "core/base/id.h"
#include "core/base/problem.h"

namespace dampward::history {

enum class Kind {
  unit_received,
  step_started,
  step_finished,
  window_missed,  // the warm window closed before the coats were on
  retest_passed,
  retest_failed,
  person_absent,
  oven_failed,
  lot_opened,
  event_withdrawn,  // the event it corrects never happened
};

// "step_started"; the kind of such a word, or nothing.
std::string_view word(Kind kind);
std::optional<Kind> kind_of(std::string_view word);
// Every word, in the order above.
const std::vector<std::string>& kind_words();

// Something that happened. What it is not about is empty.
struct Event {
  std::string id;
  Instant at;   // when it happened, not when it was noted
  PersonId by;  // who noted it
  UnitId unit;
  OvenId oven;
  PersonId person;  // whom it is about; of a step, who did it (empty: whoever noted it)
  std::string step;
  Kind kind = Kind::step_started;
  std::map<std::string, std::string> data;  // times as ISO 8601 with offset or Z
  std::string corrects;                     // id of the earlier event it stands in for
  Place place;                              // where it stands in the log
};

// "event e7 (coat1 of 0042 …)": how complaints name an event.
std::string name_of(const Event& event);

// What is wrong with one event by itself: an empty id or author, something its kind must say or must not say, a time that is
// none. All faults at once, at the event's place.
Problems faults(const Event& event);

}  // namespace dampward::history
