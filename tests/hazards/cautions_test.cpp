#include "core/hazards/cautions.h"

#include <doctest/doctest.h>

#include <fstream>
#include <set>

using namespace dampward;
using namespace dampward::hazards;

namespace {

Hazard row(std::string id, std::string step) {
  Hazard h;
  h.id = HazardId(std::move(id));
  h.step = std::move(step);
  h.guard = "gloves";
  h.source = "a regulation";
  h.defer = "Local codes and a licensed person decide.";
  return h;
}

// The shipped table, cell by cell, read with the plainest reader there is.
std::vector<std::vector<std::string>> shipped() {
  std::ifstream file(std::string(DAMPWARD_SOURCE_DIR) + "/data/hazards/hazards.csv");
  std::vector<std::vector<std::string>> lines;
  for (std::string line; std::getline(file, line);) {
    std::vector<std::string> cells(1);
    bool quoted = false;
    for (char c : line) {
      if (c == '"') {
        quoted = !quoted;
      } else if (c == ',' && !quoted) {
        cells.emplace_back();
      } else {
        cells.back() += c;
      }
    }
    lines.push_back(cells);
  }
  return lines;
}

}  // namespace

TEST_CASE("a step is warned of its own hazards first and of those that hold everywhere") {
  const auto table =
      HazardTable::of({row("H49", "all"), row("H25", "bake"), row("H32", "coat"), row("H50", "all")});
  REQUIRE(table.ok());
  const auto baking = table->cautions_for("bake");
  REQUIRE(baking.size() == 3);
  CHECK(baking[0].id.text == "H25");
  CHECK(baking[1].id.text == "H49");
  CHECK(baking[2].id.text == "H50");
}

TEST_CASE("a step nobody foresaw still carries the warnings that hold everywhere") {
  const auto table = HazardTable::of({row("H49", "all"), row("H25", "bake")});
  REQUIRE(table.ok());
  CHECK(table->cautions_for("polish").size() == 1);
  CHECK(table->cautions_for("all").size() == 1);
}

TEST_CASE("a hazard is found by its id and nothing else is") {
  const auto table = HazardTable::of({row("H06", "make_safe")});
  REQUIRE(table.ok());
  REQUIRE(table->find(HazardId("H06")) != nullptr);
  CHECK(table->find(HazardId("H06"))->step == "make_safe");
  CHECK(table->find(HazardId("H99")) == nullptr);
}

TEST_CASE("a hazard that stands twice, at no known step or without guard is told, all at once") {
  Hazard bare = row("H03", "backe");
  bare.guard.clear();
  const auto table = HazardTable::of({row("H01", "test"), row("H01", "test"), bare});
  REQUIRE(!table.ok());
  CHECK(table.problems().size() == 3);
  CHECK(table.problems()[1].next == "Did you mean \"bake\"?");
}

TEST_CASE(
    "the shipped table has fifty hazards, each with step, guard, stop sign, source, mark and a word on who "
    "decides") {
  const auto lines = shipped();
  REQUIRE(lines.size() == 51);
  const std::set<std::string> steps(known_steps().begin(), known_steps().end());
  std::set<std::string> ids;
  for (std::size_t i = 1; i < lines.size(); ++i) {
    CAPTURE(lines[i][0]);
    REQUIRE(lines[i].size() == 12);
    CHECK(ids.insert(lines[i][0]).second);
    CHECK(steps.count(lines[i][1]) == 1);
    for (const std::string& cell : lines[i]) CHECK(!cell.empty());
    CHECK((lines[i][9] == "read" || lines[i][9] == "memory" || lines[i][9] == "doubtful"));
    CHECK(lines[i][10].find("Local codes") == 0);
  }
}

TEST_CASE(
    "mercury, radium, beryllia, PCB, naphthalene wax, asbestos and radioactive tubes keep a unit waiting, "
    "lead does not") {
  std::set<std::string> isolated;
  for (const auto& line : shipped()) {
    if (line.back() == "yes") isolated.insert(line[0]);
  }
  CHECK(isolated == std::set<std::string>{"H04", "H05", "H06", "H07", "H08", "H09", "H10"});
}
