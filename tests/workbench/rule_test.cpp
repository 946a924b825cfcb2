#include "workbench/rule.h"

#include <doctest/doctest.h>

#include <fstream>
#include <set>
#include <sstream>

#include "tests/workbench/demo_shop.h"

namespace dampward::workbench::test {

TEST_CASE("the page lists every rule that refuses, in the program's own words, and no other") {
  std::ostringstream page;
  page << std::ifstream(DAMPWARD_SOURCE_DIR "/docs/cli.md").rdbuf();
  const std::string text = page.str();
  const std::size_t from = text.find("| rule | what it asks for |"), to = text.find("\n\n", from);
  REQUIRE(to != std::string::npos);
  std::string expected = "| rule | what it asks for |\n|---|---|";
  for (const Rule rule : all_rules()) {
    expected += "\n| `" + std::string(word(rule)) + "` | " + std::string(sentence(rule)) + " |";
  }
  CHECK(text.substr(from, to - from) == expected);
}

TEST_CASE("no two rules share a word") {
  std::set<std::string_view> words;
  for (const Rule rule : all_rules()) CHECK(words.insert(word(rule)).second);
}

TEST_CASE("a refusal names the rule in the way and what of the shop it concerns") {
  const Plan demo = plan_of(demo_workshop(), demo_records());
  REQUIRE(demo.refused.size() == 1);
  CHECK(demo.refused[0].rule == Rule::limit_unknown);
  CHECK(demo.refused[0].what == "filter_block");

  Workshop hot_store = demo_workshop();
  hot_store.shop.spray.heat_sources.front().distance = 2 * metre;
  hot_store.shop.spray.heat_sources.front().room = hot_store.shop.spray.room;
  const Plan closed = plan_of(hot_store, demo_records());
  REQUIRE_FALSE(closed.refused.empty());
  CHECK(closed.refused.back().rule == Rule::heat_near_solvent);
  CHECK(closed.refused.back().what == "kettle in the store");
}

}  // namespace dampward::workbench::test
