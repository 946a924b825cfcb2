#include "tests/referee/example.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <fstream>
#include <sstream>

#include "adapters/referee_json/read.h"

using namespace dampward;

namespace {

std::string text_of(const std::string& name) {
  std::ifstream file(std::string(DAMPWARD_SOURCE_DIR) + "/docs/formats/" + name);
  REQUIRE(file);
  std::stringstream text;
  text << file.rdbuf();
  return text.str();
}

template <class List, class Test>
auto& first(List& list, Test test) {
  const auto found = std::find_if(list.begin(), list.end(), test);
  REQUIRE(found != list.end());
  return *found;
}

}  // namespace

Day example_day() {
  const auto problem = referee_json::read_problem(text_of("example-problem.json"), "example-problem.json");
  const auto answer = referee_json::read_answer(text_of("example-answer.json"), "example-answer.json");
  if (!problem) FAIL(to_text(problem.problems().front()));
  if (!answer) FAIL(to_text(answer.problems().front()));
  return {*problem, *answer};
}

referee::Operation& Day::operation(const std::string& id) {
  return first(problem.operations, [&](const auto& each) { return each.id == id; });
}
referee::Gap& Day::gap(const std::string& from) {
  return first(problem.gaps, [&](const auto& each) { return each.from == from; });
}
referee::Person& Day::person(const std::string& id) {
  return first(problem.people, [&](const auto& each) { return each.id == id; });
}
referee::Placement& Day::placement(const std::string& id) {
  return first(answer.placements, [&](const auto& each) { return each.operation == id; });
}

void Day::place(const std::string& id, referee::Minute start, referee::Minute end) {
  placement(id).start = start;
  placement(id).end = end;
}

void Day::forget(const std::string& id) {
  std::erase_if(answer.placements, [&](const auto& each) { return each.operation == id; });
}

void Day::fix(const std::string& id) {
  const referee::Placement& at = placement(id);
  problem.fixed.push_back({id, at.start, at.end, at.people, at.station});
}

std::set<std::string> Day::broken() const {
  std::set<std::string> rules;
  for (const auto& violation : referee::judge(problem, answer)) rules.insert(violation.rule);
  return rules;
}

std::string Day::told() const {
  std::string text;
  for (const auto& violation : referee::judge(problem, answer))
    text += violation.rule + ": " + violation.sentence + "\n";
  return text;
}
