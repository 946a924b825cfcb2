#include "core/shop/costs.h"

#include <doctest/doctest.h>

#include <fstream>
#include <sstream>

using namespace dampward::shop;

TEST_CASE("the rows of costs stand in the order of their names in the program") {
  int number = 0;
  for (const CostRow& row : cost_rows()) {
    INFO(row.word);
    CHECK(static_cast<int>(row.cost) == number++);
    CHECK(row.usual > 0);
    CHECK(Costs{}.of(row.cost) == row.usual);
  }
  CHECK(number == static_cast<int>(Cost::way_out) + 1);
}

TEST_CASE("what a shop says of a cost counts, and is no estimate") {
  Costs costs;
  costs.own[Cost::lamp] = 7;
  CHECK(costs.of(Cost::lamp) == 7);
  CHECK_FALSE(costs.is_estimate(Cost::lamp));
  CHECK(costs.is_estimate(Cost::fan));
}

TEST_CASE("the page on the shop folder shows every cost with the figure the program takes") {
  std::ostringstream text;
  text << std::ifstream(DAMPWARD_SOURCE_DIR "/docs/formats/shop-folder.md").rdbuf();
  for (const CostRow& row : cost_rows()) {
    std::ostringstream line;
    line << "| " << row.word << " | " << row.what << " | " << row.usual << " |";
    INFO(line.str());
    CHECK(text.str().find(line.str()) != std::string::npos);
  }
}
