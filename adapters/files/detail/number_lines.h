#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/problem.h"

namespace dampward::files::detail {

struct NumberLine {
  int number = 0;  // in the file, from 1
  std::string_view text;
  std::vector<std::string_view> fields;  // between blanks
};

// The lines of a text that hold anything but blanks.
class NumberLines {
 public:
  explicit NumberLines(std::string_view text) : rest_(text) {}
  std::optional<NumberLine> next();
  int last_number() const { return number_; }

 private:
  std::string_view rest_;
  int number_ = 0;
};

// A whole number that fills its field; none where it does not, or is beyond what an int holds.
std::optional<int> whole(std::string_view field);
// The same in brackets: [-3].
std::optional<int> bracketed(std::string_view field);

// The first fault of a file, where reading stops.
struct ReadFault {
  std::string file;
  std::optional<Problem> problem;

  // Keeps it unless there is one already; always false, to be returned.
  bool at(int line, std::string found, std::string expected, std::string next = "");
  bool cut_short(int last_line, std::string expected);
};

}  // namespace dampward::files::detail
