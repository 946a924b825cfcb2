#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace dampward::cli {

// Columns a text takes on a terminal: its code points (no wide characters are used here).
std::size_t columns(std::string_view text);

// The text, cut with "…" where it takes more than so many columns.
std::string cut(std::string_view text, std::size_t width);

// The text cut, or padded with blanks, to exactly so many columns.
std::string fitted(std::string_view text, std::size_t width);

// The text broken at blanks into lines of at most `width` columns. The first keeps the blanks it starts with, the others
// start with `indent`. Below 80 columns a number stays with its unit.
std::vector<std::string> wrapped(std::string_view text, std::size_t width, std::size_t indent = 0);

// The lines with a line end after each.
std::string as_page(const std::vector<std::string>& lines);

}  // namespace dampward::cli
