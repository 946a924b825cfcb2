#include <doctest/doctest.h>

#include <map>
#include <regex>
#include <set>
#include <sstream>

#include "tests/cli/help_page.h"
#include "tests/cli/page_run.h"
#include "tests/cli/program.h"
#include "tests/files/scratch_folder.h"

namespace {

std::string manual_page() {
  const Run run = dampward_run({"man"});
  REQUIRE(run.exit_code == 0);
  CHECK(run.err.empty());
  return run.out;
}

// As a reader sees it: fonts gone, hyphens plain.
std::string read_by_eye(const std::string& roff) {
  return std::regex_replace(
      std::regex_replace(std::regex_replace(roff, std::regex("\\\\f[BIR]"), ""), std::regex("\\\\-"), "-"),
      std::regex("\\\\\\(aq"), "'");
}

// The long options of the items in each part of the page: under the name of a verb, or none before the first.
std::map<std::string, std::set<std::string>> options_by_verb() {
  std::map<std::string, std::set<std::string>> options;
  std::istringstream lines(read_by_eye(manual_page()));
  std::string verb;
  bool tag = false;
  for (std::string line; std::getline(lines, line); tag = line == ".TP") {
    if (line.starts_with(".SS ")) options[verb = line.substr(4)];
    std::smatch match;
    if (tag && std::regex_search(line, match, std::regex("^(?:-[a-z], )?(--[a-z-]+)")))
      options[verb].insert(match[1]);
  }
  for (auto& [name, all] : options) all.erase("--help");
  return options;
}

}  // namespace

TEST_CASE("the manual page has every verb and option of the help, in its words, and no others") {
  const auto options = options_by_verb();
  std::set<std::string> verbs;
  for (const auto& [verb, all] : options) {
    INFO(verb);
    CHECK(all == options_in_help(verb));
    if (!verb.empty()) verbs.insert(verb);
  }
  CHECK(verbs == verbs_in_help());
  CHECK(says(read_by_eye(manual_page()),
             "when work starts, e.g. \"2026-11-30 07:00\" (default: the queue's own"));
}

TEST_CASE("the manual page tells the exit codes and the environment as the help does") {
  const std::string help = dampward_run({"--help"}).out, page = read_by_eye(manual_page());
  for (const std::string line :
       {"the input is at fault; every fault is named at once", "width of the terminal", "NO_COLOR"}) {
    CHECK(says(help, line));
    CHECK(says(page, line));
  }
}

TEST_CASE("the manual page is plain ASCII, and no text of it is taken for a command of roff") {
  const std::string page = manual_page();
  CHECK(page.starts_with(".TH DAMPWARD 1 "));
  std::istringstream lines(page);
  const std::set<std::string> commands = {".TH", ".SH", ".SS", ".TP", ".PP"};
  for (std::string line; std::getline(lines, line);) {
    INFO(line);
    for (char c : line) CHECK(static_cast<unsigned char>(c) < 0x80);
    if (line.starts_with(".")) CHECK(commands.count(line.substr(0, 3)) == 1);
    CHECK_FALSE(line.starts_with("'"));
  }
}

TEST_CASE("groff, where it is installed, sets the manual page without a warning") {
  if (run_in_shell("command -v groff || true", "/").text.empty()) {
    MESSAGE("not tried: groff is not installed");
    return;
  }
  const ScratchFolder scratch;
  const Shown run = run_in_shell("dampward man > it; groff -man -ww -z it", scratch.path().string());
  CHECK(run.exit_code == 0);
  CHECK(run.text == "");
}
