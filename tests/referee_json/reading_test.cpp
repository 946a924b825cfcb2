#include <doctest/doctest.h>

#include <algorithm>
#include <fstream>
#include <sstream>

#include "adapters/referee_json/read.h"
#include "adapters/referee_json/verdict.h"

// What the referee's own reader refuses, and how it says where.

using namespace dampward;

namespace {

std::string text_of(const std::string& name) {
  std::ifstream file(std::string(DAMPWARD_SOURCE_DIR) + "/docs/formats/" + name);
  std::stringstream text;
  text << file.rdbuf();
  return text.str();
}

std::string swapped(std::string text, const std::string& old, const std::string& by) {
  const std::size_t at = text.find(old);
  REQUIRE_MESSAGE(at != std::string::npos, old);
  return text.replace(at, old.size(), by);
}

int line_with(const std::string& text, const std::string& piece) {
  const auto end = text.begin() + std::ptrdiff_t(text.find(piece));
  return 1 + int(std::count(text.begin(), end, '\n'));
}

// The problem with one piece put in place of another is refused with one complaint that names the path and holds the words.
void refused(const std::string& old, const std::string& by, const std::string& path,
             const std::string& right) {
  const std::string text = swapped(text_of("example-problem.json"), old, by);
  const auto read = referee_json::read_problem(text, "week.json");
  INFO(by);
  REQUIRE_FALSE(read.ok());
  INFO(to_text(read.problems().front()));
  CHECK(read.problems().size() == 1);
  const Problem& problem = read.problems().front();
  CHECK(problem.place.file == "week.json");
  CHECK(problem.place.line == line_with(text, by));
  CHECK(problem.found.starts_with(path));
  CHECK(problem.expected.find(right) != std::string::npos);
}

void answer_refused(const std::string& old, const std::string& by, const std::string& path,
                    const std::string& right) {
  const auto read =
      referee_json::read_answer(swapped(text_of("example-answer.json"), old, by), "answer.json");
  INFO(by);
  REQUIRE_FALSE(read.ok());
  INFO(to_text(read.problems().front()));
  CHECK(read.problems().size() == 1);
  CHECK(read.problems().front().found.starts_with(path));
  CHECK(read.problems().front().expected.find(right) != std::string::npos);
}

}  // namespace

TEST_CASE("the example on the page keeps every rule") {
  const std::string problem = text_of("example-problem.json"), answer = text_of("example-answer.json");
  const auto verdict = referee_json::verdict({problem, "problem"}, {answer, "answer"});
  REQUIRE(verdict.ok());
  CHECK(verdict->empty());
}

TEST_CASE("what is no JSON is refused at its line and column") {
  for (const char* text : {"", "{", "{\"format\": }", "[1, 2", "{} {}", "nothing", "\"\xff\"", "1e999"}) {
    INFO(text);
    const auto read = referee_json::read_problem(text, "week.json");
    REQUIRE_FALSE(read.ok());
    CHECK(read.problems().front().place.line == 1);
    CHECK_FALSE(read.problems().front().found.empty());
  }
  const auto read = referee_json::read_problem("{\n  \"format\": oops\n}", "week.json");
  REQUIRE_FALSE(read.ok());
  CHECK(read.problems().front().place.line == 2);
  CHECK(read.problems().front().place.column == 13);
}

TEST_CASE("a document of another shape is refused and breaks nothing") {
  for (const char* text : {"[]", "null", "3", "\"text\""}) {
    CHECK_FALSE(referee_json::read_problem(text, "week.json").ok());
    CHECK_FALSE(referee_json::read_answer(text, "answer.json").ok());
  }
  CHECK_FALSE(referee_json::read_problem(std::string(100'000, '['), "week.json").ok());
}

TEST_CASE("unknown keys, keys twice and missing keys are named") {
  refused("\"skill\": \"broom\"", "\"skil\": \"broom\"", "operations[1].skil: a key nobody knows", "one of");
  refused("\"length_min\": 15,", "\"length_min\": 15, \"length_min\": 16,",
          "operations[1].length_min: the key a second", "once");
  refused("{\"id\": \"sweep\", \"length_min\": 15,", "{\"id\": \"sweep\",",
          "operations[1].length_min: nothing", "no default");
  refused("\"version\": 1", "\"version\": 2", "version: 2", "1");
  refused("timetable problem", "timetable answer", "format: ", "dampward timetable problem");
}

TEST_CASE("wrong types and figures out of range are named with what would be right") {
  refused("\"length_min\": 15", "\"length_min\": 0", "operations[1].length_min: 0", "from 1 to 5256000");
  refused("\"length_min\": 15", "\"length_min\": 15.5", "operations[1].length_min: 15.5", "a whole number");
  refused("\"length_min\": 15", "\"length_min\": \"15\"", "operations[1].length_min: \"15\"",
          "a whole number");
  refused("\"length_min\": 15", "\"length_min\": null", "operations[1].length_min: null", "a whole number");
  refused("\"length_min\": 15", "\"length_min\": 99999999999999999999", "operations[1].length_min",
          "a whole number");
  refused("\"pausable\": true", "\"pausable\": 1", "operations[2].pausable: 1", "true or false");
  refused("\"unattended\"", "\"alone\"", "operations[6].attendance: \"alone\"", "watched");
  refused("\"volume_l\": 20", "\"volume_l\": -1", "loads[0].members[0].volume_l: -1", "from 0");
  refused("\"mass_kg\": 8", "\"mass_kg\": null", "loads[0].members[0].mass_kg: null", "a number");
  refused("\"setting_c\": 60", "\"setting_c\": 401", "loads[0].setting_c: 401", "from -50 to 400");
  refused("[[0, 10]]", "[[0, 10, 5]]", "capacities[0].steps[0]: a list", "two whole numbers");
  refused("[[0, 10]]", "[[0, -10]]", "capacities[0].steps[0][1]: -10", "from 0");
  refused("\"horizon_min\": 1440", "\"horizon_min\": 0", "horizon_min: 0", "from 1");
  refused("\"id\": \"sweep\"", "\"id\": \"\"", "operations[1].id: \"\"", "at least one letter");
  refused("\"serves\": [\"bench\"]", "\"serves\": \"bench\"", "stations[0].serves: \"bench\"", "a list");
  refused("2027-02-01T07:00:00+03:00", "Monday", "starts_at: \"Monday\"", "with offset");
}

TEST_CASE("names of nothing and names used twice are named") {
  refused("\"id\": \"sweep\"", "\"id\": \"stocktaking\", \"people\": 1", "operations[1].id: \"stocktaking\"",
          "once");
  refused("\"unit\": \"TD-0043\"", "\"unit\": \"TD-0044\"", "operations[13].unit: \"TD-0044\"", "known unit");
  refused("\"stations\": [\"booth\"]", "\"stations\": [\"roof\"]", "operations[5].stations[0]: \"roof\"",
          "station");
  refused("\"to\": \"41-test\"", "\"to\": \"41-rest\"", "gaps[3].to: \"41-rest\"", "known operation");
  refused("\"ovens\": [\"cabinet\", \"locker\"]", "\"ovens\": [\"kiln\", \"locker\"]",
          "loads[0].ovens[0]: \"kiln\"", "oven");
  refused("\"after_due\": [\"41-recheck\"]", "\"after_due\": [\"42-test\"]", "units[0].after_due[0]",
          "of this unit");
  refused("\"people\": [\"mara\"]", "\"people\": [\"nobody\"]", "fixed[0].people[0]: \"nobody\"", "person");
  refused("\"capacity\": \"vapour\"", "\"capacity\": \"steam\"", "operations[5].demands[0].capacity",
          "capacity");
}

TEST_CASE("spans out of order are named") {
  refused("\"shifts\": [[0, 480]]", "\"shifts\": [[480, 0]]", "people[0].shifts[0]: [480, 0]", "later");
  refused("\"shifts\": [[0, 480]]", "\"shifts\": [[0, 240], [240, 480]]", "people[0].shifts[1]",
          "in order and apart");
  refused("[[0, 10]]", "[[0, 10], [0, 11]]", "capacities[0].steps[1]", "in order of time");
}

TEST_CASE("what no timetable can mend is a fault of the problem") {
  refused("\"longest_min\": 60", "\"longest_min\": 10", "gaps[1].longest_min: 10",
          "no less than the shortest, 20");
  refused("\"needs_min\": 60", "\"needs_min\": 61", "loads[0].members[0].needs_min: 61", "no shorter");
  refused("\"hottest_c\": 65", "\"hottest_c\": 55", "loads[0].members[0].hottest_c: 55", "stands");
  refused("\"bake\": \"L1-bake\", \"setting_c\": 60", "\"bake\": \"L1-bake\"",
          "loads[0].members[0]: limits of the setting", "a setting_c");
  refused("\"mass_kg\": 8", "\"mass_kg\": 80", "loads[0].members: 40 l and 89 kg", "one of its ovens");
  refused("\"bake\": \"L1-bake\"", "\"bake\": \"43-rewind\"", "loads[0].bake: \"43-rewind\"", "no unit");
  refused("\"length_min\": 15, \"skill\": \"broom\"", "\"length_min\": 15", "operations[1].skill: none",
          "skill");
  refused("\"end_min\": 20", "\"end_min\": -1", "fixed[0].end_min: -1", "from its start");
}

TEST_CASE("a ring of waits names those who wait") {
  const std::string text =
      swapped(text_of("example-problem.json"), "{\"from\": \"41-open\", \"to\": \"41-in\"}",
              "{\"from\": \"41-out\", \"to\": \"41-in\"}");
  const auto read = referee_json::read_problem(text, "week.json");
  REQUIRE_FALSE(read.ok());
  const std::string found = read.problems().front().found;
  for (const char* id : {"41-in", "L1-bake", "41-out"}) CHECK(found.find(id) != std::string::npos);
  for (const char* id : {"41-coat", "42-in"}) CHECK(found.find(id) == std::string::npos);
}

TEST_CASE("fixed parts of a load must tell one oven") {
  const std::string fixed = "\"people\": [\"mara\"]}";
  const std::string text = text_of("example-problem.json");
  const std::string in = ", {\"operation\": \"41-in\", \"start_min\": 0, \"end_min\": 9";
  CHECK_FALSE(referee_json::read_problem(swapped(text, fixed, fixed + in + "}"), "week.json").ok());
  CHECK(
      referee_json::read_problem(swapped(text, fixed, fixed + in + ", \"station\": \"locker\"}"), "week.json")
          .ok());
  CHECK_FALSE(referee_json::read_problem(
                  swapped(text, fixed,
                          fixed + in +
                              ", \"station\": \"locker\"}, {\"operation\": \"42-in\", \"start_min\": 0, "
                              "\"end_min\": 9, \"station\": \"cabinet\"}"),
                  "week.json")
                  .ok());
}

TEST_CASE("an answer is read as strictly") {
  answer_refused("\"finish_min\": 470", "\"finish_min\": 470.5", "finish_min: 470.5", "a whole number");
  answer_refused("\"obstacle\": \"skill\"", "\"obstacle\": \"mood\"", "unplaced[0].obstacle: \"mood\"",
                 "cycle");
  answer_refused("\"people\": [], \"station\": null", "\"people\": []", "placements[8].station: nothing",
                 "no default");
}
