#pragma once

#include <string>
#include <vector>

namespace dampward {

// Where a fault lies. Line and column count from 1; 0 means the whole file (or the whole line).
struct Place {
  std::string file;
  int line = 0;
  int column = 0;
};

// A fault of the world (a file, an input) told so that a person can mend it.
struct Problem {
  Place place;
  std::string found;     // what stands there, in a person's words
  std::string expected;  // what would be right
  std::string next;      // what to do now; empty where `expected` already says it
};

using Problems = std::vector<Problem>;

// "ovens.toml line 14, column 9: found … Expected … Next: …", one problem a paragraph.
std::string to_text(const Problem& problem);

}  // namespace dampward
