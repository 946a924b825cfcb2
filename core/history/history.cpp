#include "core/history/history.h"

#include <algorithm>
#include <map>
#include <set>

#include "core/base/format.h"

namespace dampward::history {
namespace {

Instant time_in(const Event& event, const char* key) {
  return *parse_instant(event.data.at(key));
}

std::string text_in(const Event& event, const char* key) {
  const auto found = event.data.find(key);
  return found == event.data.end() ? "" : found->second;
}

std::string with_time(const Event& event) {
  return format("{} at {}", name_of(event), iso_text(event.at, WallClock(std::chrono::seconds(0))));
}

// The events that count, in order of time; equal times keep the order of the log.
std::vector<const Event*> standing(std::span<const Event> events, Problems& problems) {
  std::map<std::string, const Event*> known;
  std::map<std::string, std::string> replaced;  // id -> id of the event that stands in for it
  for (const Event& event : events) {
    if (!event.corrects.empty()) {
      const auto earlier = known.find(event.corrects);
      if (earlier == known.end()) {
        problems.push_back(
            {event.place,
             format("{} corrects \"{}\", which is no event before it", name_of(event), event.corrects),
             "the id of an earlier event", ""});
      } else if (!replaced.emplace(event.corrects, event.id).second) {
        problems.push_back({event.place,
                            format("{} corrects {}, which {} has corrected already", name_of(event),
                                   event.corrects, replaced.at(event.corrects)),
                            "a correction of " + replaced.at(event.corrects), ""});
      }
    }
    if (!known.emplace(event.id, &event).second)
      problems.push_back(
          {event.place, name_of(event) + " with an id used before", "an id used once in the log", ""});
  }
  std::vector<const Event*> left;
  for (const Event& event : events) {
    if (!replaced.contains(event.id) && event.kind != Kind::event_withdrawn) left.push_back(&event);
  }
  std::stable_sort(left.begin(), left.end(), [](const Event* a, const Event* b) { return a->at < b->at; });
  return left;
}

// Reads events one after another.
class Reader {
 public:
  void take(const Event& event) {
    switch (event.kind) {
      case Kind::step_started:
        start(event, event.at);
        break;
      case Kind::step_finished:
      case Kind::retest_passed:
        finish(event);
        break;
      case Kind::retest_failed:
      case Kind::window_missed:
        set_back(event);
        break;
      case Kind::person_absent:
        history_.absences.push_back({event.person, event.at, time_in(event, "until_at"), event.id});
        break;
      case Kind::oven_failed:
        history_.outages.push_back({event.oven, event.at, time_in(event, "until_at"), event.id});
        break;
      case Kind::unit_received:
      case Kind::lot_opened:
      case Kind::event_withdrawn:
        break;
    }
  }

  History done() {
    std::stable_sort(history_.steps.begin(), history_.steps.end(),
                     [](const StepRecord& a, const StepRecord& b) { return a.started < b.started; });
    return std::move(history_);
  }
  Problems problems;

 private:
  StepRecord* record_of(const Event& event) {
    const int round = rounds_[event.unit];
    const auto found = std::find_if(history_.steps.begin(), history_.steps.end(), [&](const StepRecord& r) {
      return r.unit == event.unit && r.step == event.step && r.round == round;
    });
    return found == history_.steps.end() ? nullptr : &*found;
  }

  // The step as it was begun before a setback and has not ended.
  StepRecord* running(const Event& event) {
    const auto found = std::find_if(history_.steps.begin(), history_.steps.end(), [&](const StepRecord& r) {
      return r.unit == event.unit && r.step == event.step && !r.finished;
    });
    return found == history_.steps.end() ? nullptr : &*found;
  }

  void twice(const Event& event, const char* what) {
    const Event& first = *told_.at({event.unit.text, event.step, rounds_[event.unit], what});
    problems.push_back(
        {event.place,
         format("{} of {} is said to have {} twice: {}, and {}", event.step, event.unit.text, what,
                with_time(first), with_time(event)),
         "one of the two",
         format("Withdraw the wrong one: dampward note DIR --kind event_withdrawn --corrects {} …",
                event.id)});
  }

  void start(const Event& event, Instant at) {
    if (record_of(event) != nullptr) return twice(event, "begun");
    history_.steps.push_back({event.unit, event.step, rounds_[event.unit], at, std::nullopt,
                              event.person.empty() ? event.by : event.person, event.oven,
                              text_in(event, "station"), event.id});
    told_[{event.unit.text, event.step, rounds_[event.unit], "begun"}] = &event;
  }

  void finish(const Event& event) {
    StepRecord* record = record_of(event);
    if (event.data.contains("started_at")) {
      if (record != nullptr) return twice(event, record->finished ? "ended" : "begun");
      start(event, time_in(event, "started_at"));
      record = record_of(event);
    }
    if (record == nullptr) record = running(event);
    if (record == nullptr) {
      problems.push_back(
          {event.place,
           format("{} ends {} of {}, which has not begun by then", with_time(event), event.step,
                  event.unit.text),
           "its beginning at or before that time",
           "Note when it began as step_started, or give it here as started_at in the data; correct "
           "whichever time is wrong."});
      return;
    }
    if (record->finished) return twice(event, "ended");
    record->finished = event.at;
    if (record->oven.empty()) record->oven = event.oven;
    if (record->station.empty()) record->station = text_in(event, "station");
    told_[{event.unit.text, event.step, rounds_[event.unit], "ended"}] = &event;
  }

  void set_back(const Event& event) {
    history_.setbacks.push_back({event.unit, event.kind, event.at, event.id, text_in(event, "why")});
    ++rounds_[event.unit];
  }

  struct Telling {
    std::string unit, step;
    int round;
    std::string what;
    auto operator<=>(const Telling&) const = default;
  };

  History history_;
  std::map<UnitId, int> rounds_;
  std::map<Telling, const Event*> told_;
};

}  // namespace

Result<History> read_history(std::span<const Event> events) {
  Problems problems;
  for (const Event& event : events) {
    const Problems wrong = faults(event);
    problems.insert(problems.end(), wrong.begin(), wrong.end());
  }
  const std::vector<const Event*> counted = standing(events, problems);
  if (!problems.empty()) return problems;
  Reader reader;
  for (const Event* event : counted) reader.take(*event);
  if (!reader.problems.empty()) return reader.problems;
  return reader.done();
}

}  // namespace dampward::history
