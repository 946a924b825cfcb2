// The shipped tables of published values, each asked of our models.
#include <doctest/doctest.h>

#include <algorithm>
#include <fstream>
#include <map>
#include <sstream>
#include <string>

#include "adapters/files/published.h"
#include "workbench/selfcheck.h"

using namespace dampward;
using namespace dampward::workbench;

namespace {

const SelfCheck& shipped() {
  static const SelfCheck check = [] {
    const auto rows = files::shipped_published();
    if (!rows) {
      for (const Problem& problem : rows.problems()) MESSAGE(to_text(problem));
    }
    REQUIRE(rows.ok());
    const auto result = selfcheck(*rows);
    if (!result) {
      for (const Problem& problem : result.problems()) MESSAGE(to_text(problem));
    }
    REQUIRE(result.ok());
    return *result;
  }();
  return check;
}

std::string text_of(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  std::stringstream text;
  text << file.rdbuf();
  return text.str();
}

}  // namespace

TEST_CASE("every published value that was read is met within its tolerance") {
  for (const Check& check : shipped().checks) {
    if (!check.read) continue;
    CAPTURE(check.id);
    CAPTURE(check.published);
    CAPTURE(check.computed);
    CAPTURE(check.tolerance);
    CHECK(check.within);
  }
  CHECK(shipped().out_of_tolerance == 0);
}

TEST_CASE("at least seventy published values were read") {
  CHECK(shipped().rows >= 70);
  CHECK(shipped().rows + shipped().from_memory == static_cast<int>(shipped().checks.size()));
}

TEST_CASE("no one model gives more than a quarter of the published values") {
  std::map<std::string, int> counts;
  for (const Check& check : shipped().checks) counts[check.model] += check.read;
  for (const auto& [model, count] : counts) {
    CAPTURE(model);
    CHECK(4 * count <= shipped().rows);
  }
}

TEST_CASE("every published value names its source and says why its tolerance is not tighter") {
  for (const Check& check : shipped().checks) {
    CAPTURE(check.id);
    CHECK(check.source.size() > 10);
    CHECK(check.tolerance_reason.size() > 10);
    CHECK(check.tolerance > 0);
  }
}

TEST_CASE("the page of validation says what the program finds today") {
  const std::string fresh = validation_page(shipped());
  const bool same = text_of(DAMPWARD_SOURCE_DIR "/docs/validation.md") == fresh;
  if (!same) std::ofstream("validation.md", std::ios::binary) << fresh;
  CHECK_MESSAGE(
      same, "docs/validation.md is out of date; the fresh page lies where this test ran, as validation.md");
}
