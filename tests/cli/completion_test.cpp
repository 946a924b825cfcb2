#include <doctest/doctest.h>

#include <filesystem>
#include <map>
#include <regex>
#include <set>
#include <sstream>

#include "tests/cli/help_page.h"
#include "tests/cli/page_run.h"
#include "tests/cli/program.h"
#include "tests/files/scratch_folder.h"

namespace {

using Words = std::set<std::string>;

bool is_installed(const std::string& shell) {
  return run_in_shell("command -v " + shell + " || true", "/").text != "";
}

std::string script(const std::string& shell) {
  const Run run = dampward_run({"completion", shell});
  REQUIRE(run.exit_code == 0);
  CHECK(run.err.empty());
  return run.out;
}

// What a script of bash says, after the completion was read, in a folder that holds sheets/, site.toml and "two words.json".
Words bash_says(const std::string& commands) {
  const ScratchFolder scratch;
  std::filesystem::create_directory(scratch.path() / "sheets");
  scratch.write("site.toml", "");
  scratch.write("two words.json", "");
  scratch.write("ask", "source <(dampward completion bash)\n" + commands);
  const Shown run = run_in_shell("bash ask", scratch.path().string());
  INFO(commands, "\n", run.text);
  CHECK(run.exit_code == 0);
  std::istringstream lines(run.text);
  Words words;
  for (std::string line; std::getline(lines, line);) {
    if (!line.empty() && line != "ask") words.insert(line);
  }
  return words;
}

// What the tab key offers behind these words, the last of them unfinished.
Words offered(const std::vector<std::string>& typed) {
  std::string words;
  for (const std::string& word : typed) words += " '" + word + "'";
  return bash_says("COMP_WORDS=(dampward" + words + ")\nCOMP_CWORD=" + std::to_string(typed.size()) +
                   "\n_dampward\nprintf '%s\\n' \"${COMPREPLY[@]}\"\n");
}

Words long_options(const std::string& text, const std::string& pattern) {
  Words options;
  const std::regex option(pattern);
  for (std::sregex_iterator at(text.begin(), text.end(), option), end; at != end; ++at)
    options.insert("--" + (*at)[1].str());
  options.erase("--help");
  return options;
}

std::string between(const std::string& text, const std::string& first, const std::string& last) {
  const std::size_t from = text.find(first);
  INFO("not in the script: ", first);
  REQUIRE(from != std::string::npos);
  return text.substr(from, text.find(last, from + 1) - from);
}

}  // namespace

TEST_CASE("bash offers each verb of the help and nothing else") {
  CHECK(offered({""}) == verbs_in_help());
  CHECK(offered({"pl"}) == Words{"plan"});
  CHECK(offered({"--v"}) == Words{"--version"});
}

TEST_CASE("bash offers each option of a verb's help and nothing else") {
  for (const std::string& verb : verbs_in_help()) {
    Words options = offered({verb, "--"});
    CHECK(options.erase("--help") == 1);
    INFO(verb);
    CHECK(options == options_in_help(verb));
  }
}

TEST_CASE("bash offers words where the choice is fixed, folders and files where one belongs, else nothing") {
  CHECK(offered({"plan", "shop", "--paper", ""}) == Words{"a4", "letter"});
  CHECK(offered({"plan", "shop", "--units", "=", "u"}) == Words{"us"});
  CHECK(offered({"plan", "shop", "--units", "="}) == Words{"metric", "us"});
  CHECK(offered({"plan", "--lang", "e"}) == Words{"en", "es"});
  CHECK(offered({"plan", "s"}) == Words{"sheets"});
  CHECK(offered({"charts", "--out", ""}) == Words{"sheets"});
  CHECK(offered({"verify", ""}) == Words{"sheets", "site.toml", "two words.json"});
  CHECK(offered({"verify", "two words.json", "si"}) == Words{"site.toml"});
  CHECK(offered({"completion", ""}) == Words{"bash", "fish", "zsh"});
  CHECK(offered({"plan", "shop", "--from", ""}).empty());
}

TEST_CASE("bash goes on to the options once a verb has all its arguments") {
  CHECK(offered({"plan", "--units", "us", "sheets", ""}).count("--out") == 1);
  CHECK(offered({"plan", "--units", "=", "us", "sheets", ""}).count("--out") == 1);
  CHECK(offered({"plan", "--units", "=", "us", ""}) == Words{"sheets"});
  CHECK(offered({"selfcheck", ""}).count("--json") == 1);
}

TEST_CASE("the script for zsh knows the verbs and options of the help and no others") {
  const std::string text = script("zsh");
  for (const std::string& verb : verbs_in_help()) {
    INFO(verb);
    CHECK(says(text, "\n        '" + verb + ":"));
    const std::string part = between(text, "\n        " + verb + ")\n", ";;");
    CHECK(long_options(part, "'\\*?--([a-z-]+)=?\\[") == options_in_help(verb));
  }
}

TEST_CASE("the script for fish knows the verbs and options of the help and no others") {
  std::istringstream lines(script("fish"));
  Words verbs;
  std::map<std::string, std::string> of_verb;
  for (std::string line; std::getline(lines, line);) {
    std::smatch match;
    if (std::regex_search(line, match, std::regex("__dampward_no_verb -a ([a-z]+)"))) verbs.insert(match[1]);
    if (std::regex_search(line, match, std::regex("'__dampward_verb ([a-z]+)'")))
      of_verb[match[1]] += line + "\n";
  }
  CHECK(verbs == verbs_in_help());
  for (const std::string& verb : verbs) {
    INFO(verb);
    CHECK(long_options(of_verb[verb], " -l ([a-z-]+)") == options_in_help(verb));
  }
}

TEST_CASE("zsh and fish, where they are installed, can read their scripts") {
  for (const std::string shell : {"zsh", "fish"}) {
    if (!is_installed(shell)) {
      MESSAGE("not tried: ", shell, " is not installed");
      continue;
    }
    const ScratchFolder scratch;
    const Shown run =
        run_in_shell("dampward completion " + shell + " > it; " + shell + " -n it", scratch.path().string());
    INFO(run.text);
    CHECK(run.exit_code == 0);
    CHECK(run.text.empty());
  }
}

TEST_CASE("fish, where it is installed, completes values and folders") {
  if (!is_installed("fish")) {
    MESSAGE("not tried: fish is not installed");
    return;
  }
  const ScratchFolder scratch;
  std::filesystem::create_directory(scratch.path() / "sheets");
  scratch.write("site.toml", "");
  scratch.write("ask", "dampward completion fish | source\ncomplete -C \"dampward $argv\"\n");
  const auto fish = [&](const std::string& typed) {
    return run_in_shell("HOME=$PWD fish ask '" + typed + "'", scratch.path().string()).text;
  };
  CHECK(says(fish("plan --paper "), "letter"));
  CHECK(says(fish("plan s"), "sheets/"));
  CHECK_FALSE(says(fish("plan s"), "site.toml"));
  CHECK(says(fish("solve s"), "site.toml"));
  CHECK(says(fish("plan x --fr"), "--from"));
}

TEST_CASE("a shell we have no script for is a fault of the input, and the known ones are named") {
  const Run run = dampward_run({"completion", "tcsh"});
  CHECK(run.exit_code == 2);
  CHECK(run.out.empty());
  CHECK(says(run.err, "bash, zsh or fish"));
}
