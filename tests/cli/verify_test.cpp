#include <doctest/doctest.h>

#include "tests/cli/demo_shop.h"
#include "tests/cli/program.h"

// The verb that judges a timetable, from the command line to the exit code.

namespace {

const std::string problem = DAMPWARD_SOURCE_DIR "/docs/formats/example-problem.json";
const std::string answer = DAMPWARD_SOURCE_DIR "/docs/formats/example-answer.json";

// The example's answer with one piece put in place of another.
std::string spoilt_answer(const ScratchFolder& scratch, const std::string& old, const std::string& by) {
  std::string text = whole_text(answer);
  const std::size_t at = text.find(old);
  REQUIRE(at != std::string::npos);
  scratch.write("answer.json", text.replace(at, old.size(), by));
  return (scratch.path() / "answer.json").string();
}

}  // namespace

TEST_CASE("verify finds no broken rule in the example of the page") {
  const Run run = dampward_run({"verify", problem, answer});
  CHECK(run.exit_code == 0);
  CHECK(run.out == "No rule is broken.\n");
  CHECK(run.err.empty());
  const Json document = only_document(dampward_run({"verify", problem, answer, "--json"}));
  CHECK(document.at("violations").empty());
  CHECK(document.at("faults").empty());
}

TEST_CASE("verify names the rule that a timetable breaks and what broke it") {
  const ScratchFolder scratch;
  const std::string spoilt =
      spoilt_answer(scratch, "\"start_min\": 165, \"end_min\": 185", "\"start_min\": 164, \"end_min\": 184");
  const Run run = dampward_run({"verify", problem, spoilt});
  CHECK(run.exit_code == 1);
  CHECK(says(run.out, "solvent: Solvent of \"41-coat\" is in the open from minute 164 to 165"));
  CHECK(says(run.out, "gap_long: \"41-flash\" starts 1 min after \"41-coat\" ends"));
  const Run written = dampward_run({"verify", problem, spoilt, "--json"});
  CHECK(written.exit_code == 1);
  const Json violations = only_document(written).at("violations");
  REQUIRE(violations.size() == 2);
  CHECK(violations[0].at("rule") == "gap_long");
  CHECK(violations[0].at("ids") == Json({"41-coat", "41-flash"}));
  CHECK(violations[1].at("rule") == "solvent");
  CHECK(violations[1].at("ids") == Json({"41-coat", "cabinet", "L1"}));
}

TEST_CASE("verify refuses files it cannot use and names every one") {
  const ScratchFolder scratch;
  const std::string spoilt = spoilt_answer(scratch, "\"finish_min\": 470", "\"finish\": 470");
  const Run run = dampward_run({"verify", problem, spoilt});
  CHECK(run.exit_code == 2);
  CHECK(run.out.empty());
  CHECK(says(run.err, "answer.json line"));
  CHECK(says(run.err, "finish: a key nobody knows"));
  CHECK(says(run.err, "finish_min: nothing"));

  const Run missing = dampward_run({"verify", "none.json", "nothing.json", "--json"});
  CHECK(missing.exit_code == 2);
  const Json faults = only_document(missing).at("faults");
  REQUIRE(faults.size() == 2);
  CHECK(faults[0].at("file") == "none.json");
  CHECK(faults[1].at("file") == "nothing.json");
  CHECK(dampward_run({"verify", problem}).exit_code == 2);
  CHECK(dampward_run({"verify", answer, problem}).exit_code == 2);
}
