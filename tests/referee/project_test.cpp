#include <doctest/doctest.h>

#include "core/referee/project.h"

using namespace dampward::referee;

namespace {

// Two operations of 3 and 2 that share a resource of 2, between dummies; the second within 4 of the first. By hand: at 0 and 3,
// done at 5.
Project two() {
  return {{{0, {}}, {3, {{0, 2}}}, {2, {{0, 1}}}, {0, {}}},
          {{0, 1, 0}, {0, 2, 0}, {1, 3, 3}, {2, 3, 2}, {2, 1, -4}},
          {2}};
}

std::string rules(const std::vector<std::int64_t>& starts) {
  std::string all;
  for (const Violation& one : judge_project(two(), starts)) all += (all.empty() ? "" : " ") + one.rule;
  return all;
}

}  // namespace

TEST_CASE("starts that keep gaps and capacity pass, and each planted fault is found") {
  CHECK(rules({0, 0, 3, 5}) == "");
  CHECK(rules({0, 2, 0, 5}) == "");
  CHECK(rules({0, 0, 2, 5}) == "capacity");
  CHECK(rules({0, 1, 0, 4}) == "capacity");
  CHECK(rules({0, 0, 3, 4}) == "gap");
  CHECK(rules({0, 0, 5, 7}) == "gap");
  CHECK(rules({1, 1, 4, 6}) == "start");
  CHECK(rules({0, -1, 3, 5}) == "start gap");
  CHECK(rules({0, 0, 3}) == "start");
}

TEST_CASE("an operation without duration takes nothing") {
  const Project project{{{0, {{0, 1}}}, {2, {{0, 1}}}}, {}, {1}};
  CHECK(judge_project(project, {0, 0}).empty());
}
