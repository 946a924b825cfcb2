#pragma once

#include <cstddef>
#include <optional>
#include <string>

namespace dampward::cli {

// What somebody reads an output of the program on. By default a file or another program: 80 columns, no colour.
struct Screen {
  bool is_terminal = false;
  std::size_t columns = 80;
  bool colour = false;
};

// What the environment says about it; none: not set.
struct ScreenWishes {
  std::optional<std::string> columns = {}, term = {}, no_color = {};
};

// COLUMNS goes before the width the terminal tells, if that is 20 or more; neither: 80. No colour where NO_COLOR is set to
// anything, nor where TERM is unknown or dumb.
Screen terminal_screen(std::size_t columns_told, const ScreenWishes& wishes);

// Of an open file descriptor, as the system and the environment say.
Screen screen_of(int descriptor);

// Columns of a page on it: lines longer than 120 are tiring to read.
std::size_t page_columns(const Screen& screen);

}  // namespace dampward::cli
