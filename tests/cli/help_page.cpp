#include "tests/cli/help_page.h"

#include <doctest/doctest.h>

#include <regex>
#include <sstream>

#include "tests/cli/program.h"

namespace {

// What a pattern's group catches in each of the lines that it fits.
std::set<std::string> caught(const std::string& text, const std::regex& pattern) {
  std::set<std::string> all;
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);) {
    std::smatch match;
    if (std::regex_search(line, match, pattern)) all.insert(match[1]);
  }
  return all;
}

}  // namespace

std::set<std::string> verbs_in_help() {
  const std::string help = dampward_run({"--help"}).out;
  const std::size_t from = help.find("Subcommands:");
  REQUIRE(from != std::string::npos);
  return caught(help.substr(from), std::regex("^  ([a-z]+) "));
}

std::set<std::string> options_in_help(const std::string& verb) {
  const Run help = verb.empty() ? dampward_run({"--help"}) : dampward_run({verb, "--help"});
  std::set<std::string> options = caught(help.out, std::regex("^ +(?:-[a-z], *)?(--[a-z][a-z-]*)"));
  options.erase("--help");
  return options;
}
