#include "core/base/problem.h"

#include <doctest/doctest.h>

#include <string>

#include "core/base/format.h"
#include "core/base/id.h"
#include "core/base/result.h"

using namespace dampward;

TEST_CASE("a problem tells where, what was found, what would be right and what to do") {
  const Problem problem{
      {"ovens.toml", 14, 9}, "swing = \"71 bananas\"", "a difference such as 5 K", "Write 2 K."};
  CHECK(to_text(problem) ==
        "ovens.toml line 14, column 9: found swing = \"71 bananas\". Expected a difference such as 5 K. "
        "Write 2 K.");
}

TEST_CASE("a problem of a whole file names no line, and full stops are not doubled") {
  CHECK(to_text({{"queue.csv"}, "no such file.", "a queue.", ""}) ==
        "queue.csv: found no such file. Expected a queue.");
  CHECK(to_text({{}, "nothing", "", ""}) == "found nothing.");
}

TEST_CASE("a result holds its value or its problems") {
  const Result<int> good = 7;
  CHECK(good.ok());
  CHECK(*good == 7);
  const Result<int> bad = Problem{{"queue.csv", 3}, "x", "y", ""};
  CHECK_FALSE(bad);
  CHECK(bad.problems().front().place.line == 3);
}

TEST_CASE("a part's name is never taken for a material's") {
  static_assert(!std::is_convertible_v<PartId, MaterialId>);
  static_assert(!std::is_convertible_v<std::string, PartId>);
  CHECK(PartId("dial") == PartId("dial"));
  CHECK(PartId("dial") < PartId("gang"));
}

TEST_CASE("a printed number never reads -0") {
  CHECK(fixed(-0.04, 1) == "0.0");
  CHECK(fixed(-0.06, 1) == "-0.1");
  CHECK(fixed(71.25, 1) == "71.2");
  CHECK(fixed(-0.0, 0) == "0");
}
