#include "apps/cli/judged.h"

#include <doctest/doctest.h>

#include "tests/cli/demo_shop.h"
#include "tests/cli/program.h"

// A timetable of our own that breaks a rule is never shown.

using namespace dampward::cli;

namespace {

TimetableTexts example() {
  return {whole_text(DAMPWARD_SOURCE_DIR "/docs/formats/example-problem.json"),
          whole_text(DAMPWARD_SOURCE_DIR "/docs/formats/example-answer.json")};
}

Call plan_as_json() {
  Call call;
  call.verb = "plan";
  call.json = true;
  return call;
}

}  // namespace

TEST_CASE("a timetable that keeps every rule is let through") {
  CHECK_FALSE(broken_timetable(plan_as_json(), example()).has_value());
}

TEST_CASE("a timetable of our own that breaks a rule is held back and called our mistake") {
  TimetableTexts texts = example();
  const std::string old = "\"start_min\": 165, \"end_min\": 185";
  texts.answer.replace(texts.answer.find(old), old.size(), "\"start_min\": 160, \"end_min\": 180");
  const auto held = broken_timetable(plan_as_json(), texts);
  REQUIRE(held.has_value());
  CHECK(held->code == ExitCode::our_fault);
  CHECK(says(held->err, "report it"));
  CHECK(says(held->err, "solvent: Solvent of \"41-coat\" is in the open"));
  CHECK(Json::parse(held->out).at("violations").size() == 2);
}

TEST_CASE("a timetable of our own that cannot be read is held back, and said in the one document too") {
  TimetableTexts texts = example();
  texts.answer.resize(texts.answer.size() / 2);
  const auto held = broken_timetable(plan_as_json(), texts);
  REQUIRE(held.has_value());
  CHECK(held->code == ExitCode::our_fault);
  CHECK(Json::parse(held->out).at("faults").size() == 1);
}
