#pragma once

#include <string>
#include <vector>

#include "apps/cli/page_text.h"
#include "core/base/format.h"
#include "workbench/plan.h"

namespace dampward::cli {

inline constexpr std::size_t page_width = 80;

// The page of an answer, line after line.
class AnswerPage {
 public:
  // Wrapped at the page's width; lines after the first are indented.
  void say(const std::string& text, std::size_t indent = 3) {
    for (std::string& line : wrapped(text, page_width, indent)) lines_.push_back(std::move(line));
  }
  // As it stands, blanks and all, cut at the page's width.
  void row(const std::string& text) { lines_.push_back(cut(text, page_width)); }
  void gap() { lines_.emplace_back(); }
  // A heading and, where there are any, its sentences.
  void list(const std::string& heading, const std::vector<std::string>& sentences) {
    if (sentences.empty()) return;
    lines_.push_back(heading);
    for (const std::string& sentence : sentences) say(" - " + sentence);
  }
  // What cannot be treated, why, and what would help.
  void left_out(const std::vector<workbench::Refusal>& refused) {
    for (const workbench::Refusal& each : refused)
      say(format(" not counted: {}: {}. {}", each.unit.text, each.reason, each.settle));
  }
  // The guards, each in a line; the whole rows stand in the JSON.
  void cautions(const std::vector<workbench::Caution>& cautions) {
    if (cautions.empty()) return;
    lines_.emplace_back("CAUTIONS");
    for (const workbench::Caution& caution : cautions)
      lines_.push_back(cut(format(" {} {}: {}", caution.id.text,
                                  caution.text.substr(0, caution.text.find(':')), caution.guard),
                           page_width));
    say(" Local codes and a licensed person decide. Whole rows: the same command with --json.");
  }
  std::vector<std::string> lines() && { return std::move(lines_); }

 private:
  std::vector<std::string> lines_;
};

}  // namespace dampward::cli
