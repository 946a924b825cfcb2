#include <doctest/doctest.h>

#include <algorithm>

#include "adapters/files/timetable_json.h"
#include "adapters/referee_json/verdict.h"
#include "core/line/planner.h"
#include "tests/timetable/planted.h"

// Planner and referee meet over text alone.

using namespace dampward;

namespace {

// The planner's answer to the text of a problem, as text.
std::string solved(const std::string& problem) {
  const auto read = files::read_problem(problem, "problem");
  if (!read) FAIL(to_text(read.problems().front()) << problem);
  const auto answer = line::plan(*read);
  if (!answer) FAIL(to_text(answer.problems().front()));
  return files::answer_text(*answer);
}

std::string broken(const std::string& problem, const std::string& answer) {
  const auto verdict = referee_json::verdict({problem, "problem"}, {answer, "answer"});
  if (!verdict) return to_text(verdict.problems().front());
  std::string told;
  for (const auto& violation : *verdict) told += violation.rule + ": " + violation.sentence + "\n";
  return told;
}

PlantedKind kind_of(unsigned seed) {
  return {6, seed % 3 == 0, seed % 7 == 0};
}

}  // namespace

TEST_CASE("a problem made around a plan has that plan for an answer") {
  for (unsigned seed = 0; seed < 1000; ++seed) {
    const Planted made = planted(seed, kind_of(seed));
    const std::string told = broken(made.problem.dump(), made.answer.dump());
    CHECK_MESSAGE(told.empty(), seed, ": ", told);
  }
}

TEST_CASE(
    "a thousand problems with a plan in them: the planner places every unit and the referee finds no fault") {
  for (unsigned seed = 0; seed < 1000; ++seed) {
    const Planted made = planted(seed, kind_of(seed));
    const std::string problem = made.problem.dump(), answer = solved(problem);
    const std::string told = broken(problem, answer);
    CHECK_MESSAGE(told.empty(), seed, ": ", told);
    const auto unplaced = nlohmann::json::parse(answer)["unplaced"];
    CHECK_MESSAGE(unplaced.empty(), seed, ": ", unplaced.dump());
  }
}

TEST_CASE("the order of the lists in a problem's file changes nothing") {
  for (unsigned seed = 0; seed < 100; ++seed) {
    const Planted made = planted(seed, kind_of(seed));
    nlohmann::json turned = made.problem;
    for (const char* list :
         {"units", "operations", "gaps", "loads", "people", "stations", "ovens", "capacities", "fixed"}) {
      if (turned.contains(list)) std::reverse(turned[list].begin(), turned[list].end());
    }
    for (auto& load : turned["loads"]) {
      std::reverse(load["members"].begin(), load["members"].end());
      std::reverse(load["ovens"].begin(), load["ovens"].end());
    }
    const auto sorted = [](const std::string& text) {
      nlohmann::json answer = nlohmann::json::parse(text);
      for (const char* list : {"placements", "oven_stays", "late", "unplaced"})
        std::sort(answer[list].begin(), answer[list].end());
      return answer;
    };
    CHECK_MESSAGE(sorted(solved(made.problem.dump())) == sorted(solved(turned.dump())), seed);
  }
}
