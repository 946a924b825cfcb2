#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/equipment/cut.h"
#include "core/papers/measure.h"
#include "core/papers/words.h"

namespace dampward::papers {

// What is cut to mask the units of one kind.
struct MaskSet {
  struct Piece {
    std::string part, covers;
    int count = 1;  // for one unit
    std::optional<equipment::Cut> cut = {};
  };
  std::string id, kind, shop;
  int units = 1;  // of the plan
  std::vector<Piece> pieces;
  std::string plan;  // id and time, as the foot shows it
};

// How long the line is that tells whether a printer kept the size.
inline constexpr double check_line = 50;

// Every shape at its true size, the line to check it on each page; a shape larger than the page as its measures, and a box to draw in
// where nobody wrote down a size.
Pages mask_set(const MaskSet& set, const Paper& paper, const Words& words, const Measure& measure);

}  // namespace dampward::papers
