#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "core/papers/parts.h"

// The step row of a sheet that must stay one page: no column of clocks, the smallest type, words under their title over the whole
// width.
namespace dampward::papers {

inline constexpr double tight_words = 27, tight_hand = 30;
// The smallest type with its lines as close as they read well.
inline constexpr Type tight_text{tiny, 400, Ink::black, false, 4.15},
    tight_strong{tiny, 600, Ink::black, false, 4.15};

struct TightRow {
  int number = 1;
  std::string title;
  std::vector<Warning> warnings;
  std::vector<std::string> body;                         // <b> allowed
  std::optional<Reading> reading;                        // on the line of the title
  std::function<double(Pen&, double)> inside = nullptr;  // below the words; gives where it ends
};

// Draws from the row's rule at y and gives where it ends.
double tight_row(Pen& pen, double y, const TightRow& row);

}  // namespace dampward::papers
