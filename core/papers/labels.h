#pragma once

#include <string>
#include <vector>

#include "core/base/civil_time.h"
#include "core/papers/measure.h"
#include "core/papers/words.h"

namespace dampward::papers {

// What stays with each unit, and what hangs on every bag of what came off it.
struct LabelSet {
  struct Lot {
    std::string item, lot;
  };
  struct Bag {
    std::string content;  // empty: the screws and covers
    int count = 1;
  };
  struct Unit {
    std::string serial, kind, lacquer;
    bool sprayed = true;  // else by brush
    int coats = 1;
    std::vector<Lot> lots;
    bool lot_unknown = false;  // some of it comes from no lot the stock lists
    Instant lacquered;         // last coat, as planned
    std::vector<Bag> bags;
    Instant goes_back;       // as planned
    std::string back_where;  // station
  };
  std::vector<Unit> units;
  std::string shop;
  WallClock clock{std::chrono::seconds(0)};
  std::string plan;  // id and time, as the foot shows it
};

// Two a row, dashed lines to cut along; none is split over pages and no serial is cut short.
Pages labels(const LabelSet& set, const Paper& paper, const Words& words, const Measure& measure);

}  // namespace dampward::papers
