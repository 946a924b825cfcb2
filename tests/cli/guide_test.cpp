#include <doctest/doctest.h>

#include <filesystem>
#include <set>

#include "tests/cli/page_run.h"

// The guide, each page followed to its end as a new user would.

TEST_CASE("guide: the first plan comes out as shown") {
  follow_page("guide/your-first-plan.md");
}

TEST_CASE("guide: a kind nobody has weighed becomes one that is baked") {
  follow_page("guide/a-kind-you-have-never-weighed.md");
}

TEST_CASE("guide: an oven built from a locker bakes in the end") {
  follow_page("guide/building-an-oven.md");
}

TEST_CASE("guide: every no shown there is said, and what is told to help does") {
  follow_page("guide/when-the-plan-says-no.md");
}

TEST_CASE("guide: what a new hand is shown is what the program says") {
  follow_page("guide/teaching-a-new-hand.md");
}

TEST_CASE("guide: the sheets it explains are there") {
  follow_page("guide/reading-the-sheets.md");
}

TEST_CASE("every page of the guide is followed here") {
  const std::set<std::string> followed = {"README.md",
                                          "your-first-plan.md",
                                          "a-kind-you-have-never-weighed.md",
                                          "building-an-oven.md",
                                          "when-the-plan-says-no.md",
                                          "teaching-a-new-hand.md",
                                          "reading-the-sheets.md"};
  for (const auto& entry : std::filesystem::directory_iterator(DAMPWARD_SOURCE_DIR "/docs/guide")) {
    if (entry.path().extension() != ".md") continue;
    INFO(entry.path().string());
    CHECK(followed.count(entry.path().filename().string()) == 1);
  }
}
