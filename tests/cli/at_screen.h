#pragma once

#include <cstddef>
#include <string>
#include <vector>

// What somebody sees who runs `dampward arguments…` on a terminal of so many columns, with both outputs on it. The
// environment is the test's own but for NO_COLOR, COLUMNS and TERM, which are as given ("TERM=xterm").
struct Seen {
  int exit_code = -1;
  std::string text;  // every byte, with plain line ends
};
Seen dampward_on_screen(const std::vector<std::string>& arguments, std::size_t columns,
                        const std::vector<std::string>& environment = {"TERM=xterm"});
