#pragma once

#include <set>
#include <string>
#include <vector>

#include "apps/cli/toned.h"

namespace dampward::cli {

// A titled part of a page. Each entry is one or more lines that stay together.
struct Part {
  std::string title;
  std::vector<std::vector<std::string>> entries;
  std::size_t least = 1;             // entries that others give way to first
  bool whole = false;                // what keeps people safe is never cut
  std::size_t last = 0;              // entries that never give way
  std::set<std::size_t> stops = {};  // entries that stand out, up to their colon
  Tone tone = Tone::heading;         // of the title
};

// Lines that a page may take: 40 where it is 80 columns wide or wider, in proportion more where it is narrow.
std::size_t page_lines(std::size_t width);

std::vector<Line> plain(const std::vector<std::string>& lines);

// Head, parts and last line. What does not fit is counted in the last line of its part.
std::vector<Line> page_of(const std::vector<std::string>& head, const std::vector<Part>& parts,
                          const std::string& last, std::size_t width);

}  // namespace dampward::cli
