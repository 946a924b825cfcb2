#include <doctest/doctest.h>

#include <filesystem>
#include <set>

#include "tests/cli/page_run.h"

// The guide, each page followed to its end as a new user would.

TEST_CASE("guide: the first plan comes out as shown") {
  follow_page("guide/your-first-plan.md");
}

TEST_CASE("every page of the guide is followed here") {
  const std::set<std::string> followed = {"README.md", "your-first-plan.md"};
  for (const auto& entry : std::filesystem::directory_iterator(DAMPWARD_SOURCE_DIR "/docs/guide")) {
    if (entry.path().extension() != ".md") continue;
    INFO(entry.path().string());
    CHECK(followed.count(entry.path().filename().string()) == 1);
  }
}
