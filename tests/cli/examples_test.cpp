#include <doctest/doctest.h>

#include <regex>
#include <set>
#include <sstream>

#include "tests/cli/demo_shop.h"
#include "tests/cli/help_page.h"
#include "tests/cli/page.h"
#include "tests/cli/page_run.h"
#include "tests/cli/program.h"

// Every example of docs/cli.md, run in an empty folder in the order of the page, as a reader would.

namespace {

// Every line of the page's blocks marked as shell.
std::vector<std::string> examples() {
  std::vector<std::string> found;
  for (const PageStep& step : steps_of_page(whole_text(DAMPWARD_SOURCE_DIR "/docs/cli.md"))) {
    if (step.what != PageStep::What::run) continue;
    for (const std::string& line : lines_of_text(step.text)) {
      INFO("an example that does not call the program: ", line);
      REQUIRE(line.starts_with("dampward "));
      found.push_back(line);
    }
  }
  return found;
}

std::string verb_of(const std::string& example) {
  const std::size_t from = example.find(' ') + 1;
  return example.substr(from, example.find(' ', from) - from);
}

std::set<std::string> options_in(const std::string& text) {
  std::set<std::string> options;
  static const std::regex option("--[a-z][a-z-]*");
  for (std::sregex_iterator at(text.begin(), text.end(), option), end; at != end; ++at)
    options.insert(at->str());
  options.erase("--help");
  return options;
}

// The calls and the rows of options that the page shows under a verb's heading.
std::string shown_of(const std::string& verb) {
  const std::string page = whole_text(DAMPWARD_SOURCE_DIR "/docs/cli.md");
  const std::size_t from = page.find("\n## " + verb + "\n");
  INFO("no heading for ", verb);
  REQUIRE(from != std::string::npos);
  std::istringstream section(page.substr(from, page.find("\n## ", from + 1) - from));
  std::string shown;
  for (std::string line; std::getline(section, line);) {
    if (line.starts_with("    ") || line.starts_with("| `-"))
      shown += line.substr(0, line.find("` | ")) + "\n";
  }
  return shown;
}

std::set<std::string> verbs() {
  std::set<std::string> names;
  for (const std::string& example : examples()) names.insert(verb_of(example));
  return names;
}

}  // namespace

TEST_CASE("every example of the page on the command line runs and ends well") {
  const ScratchFolder scratch;
  REQUIRE_FALSE(examples().empty());
  for (const PageStep& step : steps_of_page(whole_text(DAMPWARD_SOURCE_DIR "/docs/cli.md"))) {
    if (step.what != PageStep::What::run) {
      follow({step}, scratch.path().string());
      continue;
    }
    for (const std::string& example : lines_of_text(step.text)) {
      const Shown run = run_in_shell(example, scratch.path().string());
      INFO(example, "\n", run.text);
      CHECK(run.exit_code == 0);
      CHECK_FALSE(run.text.empty());
    }
  }
}

TEST_CASE("every option of every verb stands on the page and in an example of it") {
  for (const std::string& verb : verbs()) {
    std::set<std::string> used;
    for (const std::string& example : examples()) {
      if (verb_of(example) == verb) used.merge(options_in(example));
    }
    const std::set<std::string> told = options_in(shown_of(verb));
    for (const std::string& option : options_in_help(verb)) {
      INFO(verb, " ", option);
      CHECK(told.count(option) == 1);
      CHECK(used.count(option) == 1);
    }
    for (const std::string& option : told) {
      INFO(verb, " has no ", option, ", though the page shows it");
      CHECK(options_in_help(verb).count(option) == 1);
    }
  }
}

TEST_CASE("every verb the program knows has an example") {
  CHECK(verbs() == verbs_in_help());
}

TEST_CASE("the leaflet fits one page of 80 columns, offers no gun and tells when to stop") {
  for (const char* heat : {"lamp_box", "sun_box", "dry_box"}) {
    const Run run = dampward_run({"leaflet", "--kind", "receiver_base", "--heat", heat});
    CHECK(run.exit_code == 0);
    CHECK(std::count(run.out.begin(), run.out.end(), '\n') <= 76);
    CHECK(run.out.find("NEVER SPRAY") != std::string::npos);
    CHECK(run.out.find("gun") == std::string::npos);
    CHECK(run.out.find("STOP AT ONCE") != std::string::npos);
  }
}
