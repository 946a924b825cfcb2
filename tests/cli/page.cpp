#include "tests/cli/page.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <optional>
#include <regex>
#include <sstream>

namespace {

using Lines = std::vector<std::string>;

// Lines as an eye takes them: blanks at their ends are nothing, and one that keeps a figure with its unit is a blank.
Lines trimmed(const std::string& text) {
  static const std::regex firm_blank("\xC2\xA0|\xE2\x80\xAF");
  Lines lines = lines_of_text(std::regex_replace(text, firm_blank, " "));
  for (std::string& line : lines) line.erase(line.find_last_not_of(' ') + 1);
  while (!lines.empty() && lines.back().empty()) lines.pop_back();
  return lines;
}

bool fits(const Lines& seen, std::size_t i, const Lines& shown, std::size_t j) {
  for (; j < shown.size() && shown[j] != "..."; ++i, ++j) {
    if (i == seen.size() || seen[i] != shown[j]) return false;
  }
  if (j == shown.size()) return i == seen.size();
  for (; i <= seen.size(); ++i) {
    if (fits(seen, i, shown, j + 1)) return true;
  }
  return false;
}

int exit_code_of(const std::string& fence) {
  const std::string word = " exit ";
  const std::size_t at = fence.find(word);
  return at == std::string::npos ? 0 : std::stoi(fence.substr(at + word.size()));
}

// The step that a block of this language asks for; none for one that is only to be read.
std::optional<PageStep> begun(const std::string& fence, const std::string& before, int line) {
  const std::string language =
      fence.substr(3, fence.find(' ') == std::string::npos ? fence.npos : fence.find(' ') - 3);
  if (language == "sh") return PageStep{.line = line, .text = "", .exit_code = exit_code_of(fence)};
  if (language != "toml" && language != "csv" && language != "sch" && language != "dzn" &&
      language != "txt" && language != "diff")
    return std::nullopt;
  std::smatch name;
  INFO("line ", line, ": no file is named before this block");
  REQUIRE(std::regex_search(before, name, std::regex("`([^`]+)`[^`]*:$")));
  const bool at_end = before.find("t the end of") != std::string::npos;
  const auto what = language == "diff" ? PageStep::What::change
                    : at_end           ? PageStep::What::append
                                       : PageStep::What::write;
  return PageStep{.what = what, .line = line, .text = "", .file = name[1]};
}

}  // namespace

std::vector<std::string> lines_of_text(const std::string& text) {
  Lines lines;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  return lines;
}

bool fits_shown(const std::string& seen, const std::string& shown) {
  return fits(trimmed(seen), 0, trimmed(shown), 0);
}

std::string shown_but_not_seen(const std::string& seen, const std::string& shown) {
  const Lines all = trimmed(seen);
  for (const std::string& line : trimmed(shown)) {
    if (line != "..." && std::find(all.begin(), all.end(), line) == all.end()) return line;
  }
  return "(every line is there, in another order or beside others)";
}

std::vector<PageStep> steps_of_page(const std::string& page) {
  std::vector<PageStep> steps;
  std::string paragraph;             // of prose, the last one
  bool directly_behind_run = false;  // nothing but empty lines since the last commands
  bool in_block = false, shown = false, after_empty = false;
  std::optional<PageStep> step;
  int number = 0;
  for (const std::string& line : lines_of_text(page)) {
    ++number;
    if (in_block && line == "```") {
      in_block = false;
      if (step) steps.push_back(*step);
      directly_behind_run = step && step->what == PageStep::What::run;
      step.reset();
    } else if (in_block) {
      if (step) step->text += line + "\n";
      if (shown) steps.back().shown += line + "\n";
    } else if (line.starts_with("```")) {
      in_block = true;
      shown = line == "```text" && directly_behind_run;
      if (shown) steps.back().has_shown = true;
      step = shown ? std::nullopt : begun(line, paragraph, number);
    } else if (!line.empty()) {
      paragraph = after_empty ? line : paragraph + " " + line;
      directly_behind_run = false;
    }
    after_empty = line.empty() && !in_block;
  }
  INFO("a block that is never closed");
  REQUIRE_FALSE(in_block);
  return steps;
}
