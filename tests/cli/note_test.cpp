#include <doctest/doctest.h>

#include "tests/cli/demo_shop.h"
#include "tests/cli/program.h"

namespace {

Run noted(const DemoShop& shop, std::vector<std::string> more, const std::string& at = "2027-02-01 08:15") {
  std::vector<std::string> arguments = {"note", shop.folder(), "--by", "assistant", "--at", at};
  arguments.insert(arguments.end(), more.begin(), more.end());
  return dampward_run(arguments);
}

}  // namespace

TEST_CASE("what is noted stands in the log, and the plan goes on from it") {
  const DemoShop shop;
  for (const char* step : {"r1.make_safe", "r1.test"}) {
    const Run run = noted(shop, {"--kind", "step_finished", "--unit", "TD-0311", "--step", step, "--data",
                                 R"({"started_at": "2027-02-01T07:30:00-04:00"})"});
    INFO(run.err);
    CHECK(run.exit_code == 0);
  }
  CHECK(says(shop.text("log.jsonl"),
             R"({"id":"e1","at_utc":"2027-02-01T12:15:00Z","by":"assistant","unit":"TD-0311")"));
  CHECK(dampward_run({"proofread", shop.folder()}).exit_code == 0);

  const Json plan =
      only_document(dampward_run({"plan", shop.folder(), "--at", "2027-02-01 08:30", "--json"}));
  CHECK(plan.at("at") == "2027-02-01T08:30:00-04:00");
  CHECK_FALSE(plan.at("moved").empty());
  for (const Json& unit : plan.at("treatments")) {
    for (const Json& step : unit.at("steps")) {
      const std::string starts = step.at("starts_at");
      const bool happened =
          unit.at("unit") == "TD-0311" && (step.at("id") == "r1.make_safe" || step.at("id") == "r1.test");
      if (happened) CHECK(starts == "2027-02-01T07:30:00-04:00");
      if (!happened) CHECK(starts >= "2027-02-01T08:30:00-04:00");
    }
  }
}

TEST_CASE("a log changes nothing in a plan that is not told to go on from it") {
  const DemoShop shop;
  const std::string before = dampward_run({"plan", shop.folder(), "--json"}).out;
  CHECK(noted(shop, {"--kind", "unit_received", "--unit", "TD-0311"}).exit_code == 0);
  CHECK(dampward_run({"plan", shop.folder(), "--json"}).out == before);
}

TEST_CASE("an altered line stops proofread and plan, and its hash names it") {
  const DemoShop shop;
  for (int i = 0; i < 2; ++i)
    CHECK(noted(shop, {"--kind", "unit_received", "--unit", "TD-0311"}).exit_code == 0);
  const std::string log = shop.text("log.jsonl");
  const std::size_t at = log.find("\"hash\":\"") + 8;
  const std::string hash = log.substr(at, 64);
  shop.replace("log.jsonl", "TD-0311", "TD-0312");
  for (const char* verb : {"proofread", "plan"}) {
    const Run run = dampward_run({verb, shop.folder()});
    CHECK(run.exit_code == 2);
    CHECK(says(run.err, "log.jsonl line 1"));
    CHECK(says(run.err, hash));
  }
  CHECK(noted(shop, {"--kind", "unit_received", "--unit", "TD-0311"}).exit_code == 2);
}

TEST_CASE("an event later than the time planned at is named") {
  const DemoShop shop;
  CHECK(noted(shop, {"--kind", "unit_received", "--unit", "TD-0311"}).exit_code == 0);
  const Run run = dampward_run({"plan", shop.folder(), "--at", "2027-02-01 08:00"});
  CHECK(run.exit_code == 2);
  CHECK(says(run.err, "event e1"));
  CHECK(dampward_run({"plan", shop.folder(), "--at", "noon"}).exit_code == 2);
}

TEST_CASE("bad notes are refused with what would be right, and nothing is written") {
  const DemoShop shop;
  const struct {
    std::vector<std::string> options;
    const char* told;
  } bad[] = {
      {{"--kind", "step_begun", "--unit", "TD-0311", "--step", "r1.test"}, "step_started"},
      {{"--kind", "unit_received", "--unit", "TD-9999"}, "TD-9999"},
      {{"--kind", "unit_received"}, "without \"unit\""},
      {{"--kind", "step_started", "--unit", "TD-0311", "--step", "r1.tset"}, "r1.test"},
      {{"--kind", "step_finished", "--unit", "TD-0311", "--step", "r1.test"}, "has not begun"},
      {{"--kind", "unit_received", "--unit", "TD-0311", "--data", "why"}, "no JSON"},
      {{"--kind", "unit_received", "--unit", "TD-0311", "--data", R"({"why": 3})"}, "a text"},
      {{"--kind", "oven_failed", "--oven", "kitchen", "--data", R"({"until_at": "2027-02-02T00:00:00Z"})"},
       "kitchen"},
      {{"--kind", "person_absent", "--person", "painter"}, "until_at"},
      {{"--kind", "event_withdrawn", "--corrects", "e7"}, "e7"},
  };
  for (const auto& note : bad) {
    const Run run = noted(shop, note.options);
    INFO(note.told, run.err);
    CHECK(run.exit_code == 2);
    CHECK(says(run.err, note.told));
    CHECK_FALSE(std::filesystem::exists(shop.path("log.jsonl")));
  }
  CHECK(noted(shop, {"--kind", "unit_received", "--unit", "TD-0311"}, "yesterday").exit_code == 2);
}
