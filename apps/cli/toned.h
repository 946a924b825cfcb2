#pragma once

#include <string>
#include <vector>

namespace dampward::cli {

// How words stand out on a screen with colour: bold, or bold and red. They say the same without it.
enum class Tone { plain, heading, stop };

// A line of a page, of which the first bytes stand out.
struct Line {
  std::string text;
  Tone tone = Tone::plain;
  std::size_t toned = std::string::npos;
};

// The lines with a line end after each.
std::string as_page(const std::vector<Line>& lines, bool colour);

}  // namespace dampward::cli
