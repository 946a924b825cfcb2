#pragma once

#include <string>
#include <vector>

#include "core/base/civil_time.h"
#include "core/papers/measure.h"
#include "core/papers/words.h"
#include "core/quantity/quantity.h"
#include "core/quantity/range.h"

namespace dampward::papers {

// What hangs where one pot is mixed.
struct MixingSheet {
  std::string pot, shop, lacquer;
  bool brushed = false;            // else sprayed
  std::vector<std::string> units;  // serials, in the order they are coated
  Range<Volume> ready;             // of mix
  double thinner_parts = 0;        // to one part of lacquer, by volume
  struct Take {
    std::string item, lot;
    Volume amount;
  };
  std::vector<Take> takes;  // for the usual amount, first expired first
  Volume missing;           // of it, what no lot in date can give
  Instant mix, use_by;
  WallClock clock{std::chrono::seconds(0)};
  std::string plan;  // id and time, as the foot shows it
};

// One page: litres, the moments, lots in order with a tick and a box each, the ratio, boxes for cup and film, what must be on
// before a can opens, and what becomes of what is left.
Page mixing_sheet(const MixingSheet& sheet, const Paper& paper, const Words& words, const Measure& measure);

}  // namespace dampward::papers
