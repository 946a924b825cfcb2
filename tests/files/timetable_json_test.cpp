#include "adapters/files/timetable_json.h"

#include <doctest/doctest.h>

#include <string>

#include "adapters/files/text_file.h"
#include "core/line/planner.h"
#include "tests/files/json_schema.h"

namespace dampward::files::test {
namespace {

line::Problem shop() {
  line::Problem problem;
  problem.horizon = 600;
  problem.now = 3;
  problem.units = {{"u", 90, 2, 3, {"u.recheck"}}, {"v", std::nullopt, 0, 1, {}}};
  const auto work = [&](const char* id, const char* unit, line::Attendance attendance, const char* skill) {
    line::Operation op;
    op.id = id;
    op.unit = unit;
    op.length = 10;
    op.attendance = attendance;
    op.skill = skill;
    problem.operations.push_back(op);
    return &problem.operations.back();
  };
  using line::Attendance;
  work("u.load", "u", Attendance::attended, "oven");
  work("u.unload", "u", Attendance::attended, "oven");
  work("bake", "", Attendance::watched, "oven");
  auto* coat = work("u.coat", "u", Attendance::attended, "spray");
  coat->solvent = true, coat->clears = 5, coat->demands = {{"vapour", 7, 2}}, coat->stations = {"booth"};
  work("u.recheck", "u", Attendance::unattended, "")->station_skill = "shelf";
  auto* sweep = work("v.sweep", "v", Attendance::attended, "magic");
  sweep->pausable = true, sweep->people = 1;
  problem.gaps = {{"window", "u.unload", "u.coat", 1, 30}, {"", "u.coat", "u.recheck", 0, std::nullopt}};
  problem.loads = {
      {"L",
       {"cabinet"},
       "bake",
       {{"u.load", "u.unload", 10, 12.5 * litre, 3.25 * kilogram, Temperature::celsius(49), std::nullopt}},
       Temperature::celsius(60)}};
  problem.people = {{"all", {"oven", "spray"}, {{0, 300}}, {{100, 110}}}};
  problem.stations = {{"booth", 1, {"spray"}}, {"shelf", 2, {"shelf"}}};
  problem.ovens = {{"cabinet", {{0, 600}}, false, 15, 40 * litre, std::nullopt}};
  problem.capacities = {{"vapour", {{0, 9}}}};
  problem.fixed = {{"u.load", -5, 5, {"all"}, "cabinet"}};
  return problem;
}

}  // namespace

TEST_CASE("a problem read back from its text is the problem, and its text the same") {
  const std::string text = problem_text(shop(), "2027-02-01T07:00:00-04:00");
  const auto read = read_problem(text, "week.json");
  REQUIRE_MESSAGE(read.ok(), to_text(read.problems().front()));
  CHECK(problem_text(*read, "2027-02-01T07:00:00-04:00") == text);
}

TEST_CASE("what is written fits the schemas of the format page") {
  const auto answer = line::plan(shop(), {});
  REQUIRE_MESSAGE(answer.ok(), to_text(answer.problems().front()));
  CHECK(answer->unplaced.size() == 1);
  const auto misfit = [](const char* of, const std::string& text) {
    const std::string name = std::string("timetable-") + of + ".schema.json";
    const auto schema = read_text(DAMPWARD_SOURCE_DIR "/docs/formats/" + name, name).value();
    return misfits(nlohmann::json::parse(schema), nlohmann::json::parse(text));
  };
  for (const std::string& found : misfit("problem", problem_text(shop()))) FAIL_CHECK(found);
  for (const std::string& found : misfit("answer", answer_text(*answer))) FAIL_CHECK(found);
}

TEST_CASE("a problem that cannot be used is refused with the path of the value and what would be right") {
  const std::string sound = problem_text(shop());
  struct Row {
    const char *what, *by, *says;
  };
  for (const Row& row : {
           Row{"\"horizon_min\": 600", "\"horizon_min\": -600", "horizon_min: -600"},
           Row{"\"length_min\": 10", "\"length_min\": \"ten\"", "operations[0].length_min: \"ten\""},
           Row{"\"attendance\": \"attended\"", "\"attendance\": \"asleep\"",
               "operations[0].attendance: \"asleep\""},
           Row{"\"solvent\": false", "\"solvant\": false",
               "operations[0].solvant: a key that means nothing here"},
           Row{"\"starts_at\": null", "\"starts_at\": \"Monday\"", "starts_at: \"Monday\""},
           Row{"\"version\": 1,", "\"version\": 1, \"version\": 1,", "the key \"version\" twice"},
           Row{"\"amount\": 7", "\"amount\": 7.5", "operations[3].demands[0].amount: 7.5"},
           Row{"\"bake\": \"bake\"", "\"bake\": \"bke\"", "\"bke\", which is not there"},
           Row{"\"volume_l\": 12.5", "\"volume_l\": 41", "load L of 41 L"},
       }) {
    std::string text = sound;
    const std::size_t at = text.find(row.what);
    REQUIRE_MESSAGE(at != std::string::npos, row.what);
    const auto read = read_problem(text.replace(at, std::string(row.what).size(), row.by), "week.json");
    REQUIRE_MESSAGE(!read.ok(), row.says);
    std::string told;
    for (const auto& problem : read.problems()) told += to_text(problem) + "\n";
    CHECK_MESSAGE(told.find(row.says) != std::string::npos, row.says, " / ", told);
    CHECK_MESSAGE(told.find("week.json") == 0, told);
  }
  const auto cut = read_problem(sound.substr(0, sound.size() / 2), "week.json");
  REQUIRE_FALSE(cut.ok());
  CHECK(cut.problems().front().place.line > 1);
}

}  // namespace dampward::files::test
