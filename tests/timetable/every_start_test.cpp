#include <doctest/doctest.h>

#include <functional>
#include <nlohmann/json.hpp>
#include <random>

#include "adapters/files/timetable_json.h"
#include "adapters/referee_json/read.h"
#include "core/line/planner.h"
#include "core/referee/judge.h"

// Tiny problems against a twin that tries every start of every operation, with the referee to say which of them is a plan.

using namespace dampward;

namespace {

using nlohmann::json;

// One unit of three to six short operations by one hand, with waits drawn at random: some have no plan.
json tiny(unsigned seed) {
  std::mt19937 random(seed);
  const auto pick = [&](int least, int most) { return least + int(random() % unsigned(most - least + 1)); };
  const int number = pick(3, 6), horizon = 9;
  json problem = {{"format", "dampward timetable problem"}, {"version", 1}, {"horizon_min", horizon}};
  problem["units"] = json::array({{{"id", "u"}}});
  const int rest = pick(1, horizon - 2);
  problem["people"] = json::array({{{"id", "hand"},
                                    {"skills", json::array({"work"})},
                                    {"shifts", json::array({json::array({0, horizon})})},
                                    {"breaks", json::array({json::array({rest, rest + 1})})}}});
  problem["capacities"] = json::array({{{"id", "air"}, {"steps", json::array({json::array({0, 2})})}}});
  for (int i = 0; i < number; ++i) {
    json operation = {{"id", "o" + std::to_string(i)}, {"unit", "u"}, {"length_min", pick(1, 2)}};
    if (pick(0, 2) > 0) {
      operation["skill"] = "work";
    } else {
      operation["attendance"] = "unattended";
    }
    operation["demands"] =
        json::array({{{"capacity", "air"}, {"amount", pick(0, 2)}, {"tail_min", pick(0, 1)}}});
    problem["operations"].push_back(operation);
  }
  problem["gaps"] = json::array();
  for (int i = 1; i < number; ++i) {
    if (pick(0, 3) == 0) continue;
    json gap = {{"from", "o" + std::to_string(pick(0, i - 1))}, {"to", "o" + std::to_string(i)}};
    gap["shortest_min"] = pick(0, 1);
    if (pick(0, 1) == 0) gap["longest_min"] = gap["shortest_min"].get<int>() + pick(0, 2);
    problem["gaps"].push_back(gap);
  }
  return problem;
}

// Whether any choice of starts is a plan. A start is given up as soon as what is placed so far breaks a rule between
// operations, told or not of the rest.
bool has_a_plan(const referee::PlanProblem& problem) {
  referee::PlanAnswer answer;
  const std::function<bool(std::size_t)> place = [&](std::size_t i) {
    if (i == problem.operations.size()) return true;
    const auto& operation = problem.operations[i];
    for (referee::Minute start = 0; start + operation.length <= problem.horizon; ++start) {
      std::vector<std::string> people;
      if (operation.attendance == referee::Attendance::attended) people = {"hand"};
      answer.placements.push_back({operation.id, start, start + operation.length, people, {}});
      bool broken = false;
      for (const auto& violation : referee::judge(problem, answer)) {
        const bool of_the_whole =
            violation.rule == "whole" || violation.rule == "untold" || violation.rule == "finish";
        broken = broken || !of_the_whole;
      }
      if (!broken && place(i + 1)) return true;
      answer.placements.pop_back();
    }
    return false;
  };
  return place(0);
}

}  // namespace

TEST_CASE("tiny problems: the planner has a plan where trying every start finds one, and none elsewhere") {
  int feasible = 0;
  for (unsigned seed = 0; seed < 200; ++seed) {
    const std::string text = tiny(seed).dump();
    const auto asked = referee_json::read_problem(text, "tiny");
    const auto read = files::read_problem(text, "tiny");
    REQUIRE(asked.ok());
    REQUIRE(read.ok());
    const auto planned = line::plan(*read);
    REQUIRE(planned.ok());
    const auto answer = referee_json::read_answer(files::answer_text(*planned), "answer");
    REQUIRE(answer.ok());
    CHECK(referee::judge(*asked, *answer).empty());
    const bool possible = has_a_plan(*asked), placed = planned->unplaced.empty();
    CHECK_MESSAGE(possible == placed, seed);
    feasible += possible;
  }
  MESSAGE(feasible << " have a plan");
  CHECK(feasible > 50);
  CHECK(feasible < 200);
}
