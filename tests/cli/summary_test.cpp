#include <doctest/doctest.h>

#include <set>

#include <algorithm>
#include <sstream>

#include "apps/cli/page_text.h"
#include "tests/cli/demo_shop.h"
#include "tests/cli/program.h"

namespace {

Run plan(const DemoShop& shop, std::vector<std::string> more = {}) {
  more.insert(more.begin(), {"plan", shop.folder()});
  const Run run = dampward_run(more);
  INFO(run.err);
  REQUIRE(run.exit_code == 0);
  return run;
}

void check_fits_a_page(const std::string& page) {
  std::istringstream in(page);
  int count = 0;
  for (std::string line; std::getline(in, line); ++count) {
    INFO(line);
    CHECK(dampward::cli::columns(line) <= 80);
    CHECK_FALSE(line.ends_with(" "));
  }
  CHECK(count <= 40);
}

// What the page must not lose however full it is: who is refused, who is late, and every load.
void check_says_what_matters(const std::string& page, const Json& plan) {
  INFO(page);
  for (const Json& unit : plan.at("refused")) CHECK(says(page, unit.at("unit")));
  for (const Json& unit : plan.at("late")) CHECK(says(page, unit.at("unit")));
  for (const Json& load : plan.at("loads")) CHECK(says(page, load.at("id")));
  CHECK(says(page, "--json"));
}

}  // namespace

TEST_CASE("the demo's plan fits a page and names every refused and late unit and every load") {
  const DemoShop shop;
  const Json document = only_document(plan(shop, {"--json"}));
  for (const std::string units : {"metric", "us"}) {
    INFO(units);
    const std::string page = plan(shop, {"--units", units}).out;
    check_fits_a_page(page);
    check_says_what_matters(page, document);
  }
}

TEST_CASE("a plan taken up from the log fits a page and still names every load") {
  const DemoShop shop;
  const Run noted =
      dampward_run({"note", shop.folder(), "--kind", "step_started", "--unit", "TD-0311", "--step",
                    "r1.make_safe", "--by", "technician", "--at", "2027-02-01 07:10"});
  REQUIRE_MESSAGE(noted.exit_code == 0, noted.err);
  const std::vector<std::string> at{"--at", "2027-02-01 07:30"};
  const std::string page = plan(shop, at).out;
  check_fits_a_page(page);
  check_says_what_matters(page, only_document(plan(shop, {"--at", "2027-02-01 07:30", "--json"})));
}

TEST_CASE("a plan of 500 units fits a page too, and says how much it leaves to the JSON answer") {
  const DemoShop shop;
  shop.write_queue(long_queue(shop, 500));
  const std::string page = plan(shop).out;
  check_fits_a_page(page);
  CHECK(says(page, "500"));
  CHECK(says(page, "more"));
  CHECK(says(page, "--json"));
}

TEST_CASE("an empty queue and a queue of one fit a page") {
  const DemoShop shop;
  shop.write_queue({shop.queue_rows().front()});
  check_fits_a_page(plan(shop).out);
  shop.write_queue({});
  check_fits_a_page(plan(shop).out);
}

TEST_CASE("us units show °F, gallons and cubic feet a minute, metric ones do not") {
  const DemoShop shop;
  const std::string us = plan(shop, {"--units", "us"}).out, metric = plan(shop, {"--units", "metric"}).out;
  for (const std::string unit : {"°F", "gal", "cfm"}) {
    INFO(unit);
    CHECK(says(us, unit));
    CHECK_FALSE(says(metric, unit));
  }
  CHECK(metric == plan(shop).out);
}

TEST_CASE("--from moves the start of the plan, and with it every time") {
  const DemoShop shop;
  const Json early = only_document(plan(shop, {"--json"}));
  const Json late = only_document(plan(shop, {"--json", "--from", "2027-02-08 07:00"}));
  CHECK(early.at("from") == "2027-02-01T07:00:00-04:00");
  CHECK(late.at("from") == "2027-02-08T07:00:00-04:00");
  for (const Json& unit : late.at("treatments")) {
    for (const Json& step : unit.at("steps")) CHECK(step.at("starts_at") >= "2027-02-08T07:00:00-04:00");
  }
  CHECK(early.at("treated") == late.at("treated"));
  CHECK(says(plan(shop, {"--from", "2027-02-08 07:00"}).out, "2027-02-08 07:00"));
  CHECK(plan(shop, {"--json", "--from", "2027-02-01 07:00"}).out == plan(shop, {"--json"}).out);
}

TEST_CASE("the same folder gives the same plan, byte for byte") {
  const DemoShop shop, copy;
  CHECK(plan(shop, {"--json"}).out == plan(shop, {"--json"}).out);
  CHECK(plan(shop, {"--json"}).out == plan(copy, {"--json"}).out);
  CHECK(plan(shop).out == plan(copy).out);
}

TEST_CASE("the order of the queue's rows changes nothing") {
  const DemoShop shop;
  const std::string before = plan(shop, {"--json"}).out;
  auto rows = shop.queue_rows();
  std::reverse(rows.begin(), rows.end());
  shop.write_queue(rows);
  CHECK(plan(shop, {"--json"}).out == before);
  std::rotate(rows.begin(), rows.begin() + 5, rows.end());
  shop.write_queue(rows);
  CHECK(plan(shop, {"--json"}).out == before);
}

TEST_CASE("the way a spreadsheet saves the queue changes nothing") {
  const DemoShop shop;
  const std::string before = plan(shop, {"--json"}).out;
  std::string text = shop.text("queue.csv");
  std::replace(text.begin(), text.end(), ',', ';');
  std::string with_returns = "\xEF\xBB\xBF";
  for (const char c : text) with_returns += c == '\n' ? std::string("\r\n") : std::string(1, c);
  shop.write("queue.csv", with_returns);
  CHECK(plan(shop, {"--json"}).out == before);
}

TEST_CASE("standard output holds only the answer, progress goes to standard error, and only to a terminal") {
  const DemoShop shop;
  shop.write_queue(long_queue(shop, 120));
  const Run piped = plan(shop, {"--json"});
  CHECK(piped.err.empty());
  const Run watched = dampward_run_at_terminal({"plan", shop.folder(), "--json"});
  CHECK(watched.exit_code == 0);
  CHECK(says(watched.err, "..."));
  CHECK(watched.out == piped.out);
  (void)only_document(watched);
}

TEST_CASE("a delay is told once for each unit it moves, the late ones first") {
  const DemoShop demo;
  dampward_run({"note", demo.folder(), "--kind", "step_started", "--unit", "TD-0311", "--step",
                "r1.make_safe", "--by", "technician", "--at", "2027-02-01 07:20"});
  const std::vector<std::string> at = {"--at", "2027-02-01 07:25"};
  const Json plan = only_document(dampward_run({"plan", demo.folder(), at[0], at[1], "--json"}));
  std::set<std::string> units;
  for (const Json& step : plan["moved"]) units.insert(step["unit"]);
  REQUIRE(plan["moved"].size() > units.size());
  const std::string page = dampward_run({"plan", demo.folder(), at[0], at[1]}).out;
  CHECK(page.find("(" + std::to_string(units.size()) + " units moved, 0 thrown back)") != std::string::npos);
  CHECK(page.find(" steps). ") != std::string::npos);
}
