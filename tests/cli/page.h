#pragma once

#include <string>
#include <vector>

// A page of the documentation as a story to follow: what its reader types, sees and writes into files, in order.

// ```sh           commands as typed, run together in one shell; "```sh exit 2" where they end so
// ```text         right behind them: what they show; `...` alone on a line stands for lines left out
// ```toml, ```csv, ```sch  the whole content of the file that the paragraph before them ends with: "`shop/ovens.toml`:"
//                 or lines at its end, where that paragraph says "at the end of"
// ```diff         lines of such a file that change: out goes what begins with - (notes behind it may be left out here),
//                 in its place comes what begins with +
struct PageStep {
  enum class What { run, write, append, change };
  What what = What::run;
  int line = 0;      // of the page, where the block begins
  std::string text;  // what stands in the block
  // Of commands:
  int exit_code = 0;
  bool has_shown = false;
  std::string shown = {};
  // Of the rest:
  std::string file = {};
};

// The steps of a page; fails the test where a block of a file has no name before it.
std::vector<PageStep> steps_of_page(const std::string& page);

// Lines of a text without their ends.
std::vector<std::string> lines_of_text(const std::string& text);

// Whether `seen` is what `shown` shows, blanks at line ends aside.
bool fits_shown(const std::string& seen, const std::string& shown);

// The first line of `shown` that was not seen, for whoever has to mend the page.
std::string shown_but_not_seen(const std::string& seen, const std::string& shown);
