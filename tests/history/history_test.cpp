#include "core/history/history.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <string>
#include <vector>

using namespace dampward;
using namespace dampward::history;

namespace {

Instant at(const char* time) {
  return *parse_instant(std::string("2027-02-01T") + time + ":00Z");
}

Event event(const char* id, Kind kind, const char* time, const char* step = "", const char* unit = "0042") {
  Event told;
  told.id = id;
  told.kind = kind;
  told.at = at(time);
  told.by = PersonId("lead");
  told.unit = UnitId(unit);
  told.step = step;
  return told;
}

std::string problems_of(const std::vector<Event>& events) {
  const auto history = read_history(events);
  std::string all;
  if (!history) {
    for (const Problem& problem : history.problems()) all += to_text(problem) + "\n";
  }
  return all;
}

bool tells(const std::string& text, const char* part) {
  return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("a step is known by its beginning and its end, whatever the order they were noted in") {
  std::vector<Event> events = {event("e1", Kind::step_started, "08:00", "r1.clean"),
                               event("e2", Kind::step_finished, "08:20", "r1.clean")};
  for (int turn = 0; turn < 2; ++turn) {
    const auto history = read_history(events);
    REQUIRE(history.ok());
    REQUIRE(history->steps.size() == 1);
    CHECK(history->steps[0].started == at("08:00"));
    CHECK(history->steps[0].finished == at("08:20"));
    CHECK(history->steps[0].person == PersonId("lead"));
    std::reverse(events.begin(), events.end());
  }
}

TEST_CASE("one event may tell of both ends of a step") {
  Event done = event("e1", Kind::step_finished, "08:20", "r1.clean");
  done.data["started_at"] = "2027-02-01T08:00:00Z";
  const auto history = read_history(std::vector{done});
  REQUIRE(history.ok());
  CHECK(history->steps.at(0).started == at("08:00"));
}

TEST_CASE("a step finished before it began is named") {
  CHECK(tells(problems_of({event("e1", Kind::step_started, "08:30", "r1.clean"),
                           event("e2", Kind::step_finished, "08:20", "r1.clean")}),
              "event e2"));
  Event done = event("e1", Kind::step_finished, "08:20", "r1.clean");
  done.data["started_at"] = "2027-02-01T08:40:00Z";
  CHECK(tells(problems_of({done}), "after it was finished"));
}

TEST_CASE("two people who note one step are both named") {
  Event other = event("e2", Kind::step_started, "08:05", "r1.clean");
  other.by = PersonId("painter");
  const std::string told = problems_of({event("e1", Kind::step_started, "08:00", "r1.clean"), other});
  CHECK(tells(told, "event e1"));
  CHECK(tells(told, "noted by painter"));
  CHECK(tells(told, "event_withdrawn --corrects e2"));
}

TEST_CASE("an event that was withdrawn or corrected does not count") {
  Event withdrawn = event("e3", Kind::event_withdrawn, "09:00");
  withdrawn.unit = UnitId();
  withdrawn.corrects = "e2";
  const std::vector<Event> twice = {event("e1", Kind::step_started, "08:00", "r1.clean"),
                                    event("e2", Kind::step_started, "08:05", "r1.clean"), withdrawn};
  CHECK(read_history(twice).ok());

  Event better = event("e2", Kind::step_started, "07:50", "r1.clean");
  better.corrects = "e1";
  const auto history =
      read_history(std::vector{event("e1", Kind::step_started, "08:00", "r1.clean"), better});
  REQUIRE(history.ok());
  CHECK(history->steps.at(0).started == at("07:50"));

  CHECK(tells(problems_of({better}), "no event before it"));
}

TEST_CASE("a step may be done again after a setback, and only then") {
  const std::vector<Event> events = {event("e1", Kind::step_started, "08:00", "r1.bake"),
                                     event("e2", Kind::step_finished, "09:00", "r1.bake"),
                                     event("e3", Kind::window_missed, "10:00"),
                                     event("e4", Kind::step_started, "11:00", "r1.bake")};
  const auto history = read_history(events);
  REQUIRE(history.ok());
  REQUIRE(history->steps.size() == 2);
  CHECK(history->steps[0].round == 0);
  CHECK(history->steps[1].round == 1);
  CHECK(history->setbacks.at(0).event == "e3");
  CHECK_FALSE(problems_of({events[0], events[1], events[3]}).empty());
}

TEST_CASE("an event says what its kind must and nothing its kind must not") {
  CHECK(tells(problems_of({event("e1", Kind::step_started, "08:00")}), "without \"step\""));
  Event away = event("e1", Kind::person_absent, "08:00");
  away.unit = UnitId();
  CHECK(tells(problems_of({away}), "without \"person\""));
  CHECK(tells(problems_of({away}), "\"until_at\""));
  away.person = PersonId("painter");
  away.data["until_at"] = "2027-02-01T07:00:00Z";
  CHECK(tells(problems_of({away}), "before it begins"));
  away.data["until_at"] = "tomorrow";
  CHECK(tells(problems_of({away}), "tomorrow"));
  away.data["until_at"] = "2027-02-02T07:00:00Z";
  away.data["colour"] = "blue";
  CHECK(tells(problems_of({away}), "colour"));
  away.data.erase("colour");
  away.data["why"] = "fever";
  const auto history = read_history(std::vector{away});
  REQUIRE(history.ok());
  CHECK(history->absences.at(0).until == *parse_instant("2027-02-02T07:00:00Z"));
}

TEST_CASE("every kind has a word of its own that leads back to it") {
  for (const std::string& said : kind_words()) {
    const auto kind = kind_of(said);
    REQUIRE(kind.has_value());
    CHECK(word(*kind) == said);
  }
  CHECK_FALSE(kind_of("step_dreamt").has_value());
}

TEST_CASE("an id used twice is named") {
  CHECK(tells(
      problems_of({event("e1", Kind::unit_received, "08:00"), event("e1", Kind::unit_received, "09:00")}),
      "id used before"));
}
