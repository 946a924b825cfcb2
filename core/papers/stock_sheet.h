#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/civil_time.h"
#include "core/papers/measure.h"
#include "core/papers/words.h"
#include "core/quantity/quantity.h"
#include "core/quantity/range.h"

namespace dampward::papers {

// What hangs at the lacquer store: what runs out first?
struct StockSheet {
  std::string shop;
  struct Lot {
    std::string lot;
    Volume left;
    std::optional<Date> use_by;  // none: nobody wrote it down
    bool expired = false;        // past its date by the last coat
  };
  struct Item {
    std::string name;
    Range<Volume> needed;
    Volume in_stock;  // of lots in date
    Volume to_get;    // so that even the worst is covered
    bool is_short = false;
    std::optional<Instant> first_use;
    std::vector<Lot> lots;  // in the order to use them, the expired last
  };
  std::vector<Item> items;  // what runs out first stands first
  Instant from;
  WallClock clock{std::chrono::seconds(0)};
  std::string plan;  // id and time, as the foot shows it
};

// Item under item: when it is needed, what is short and how much to get, then its lots with a box for what was counted.
Pages stock_sheet(const StockSheet& sheet, const Paper& paper, const Words& words, const Measure& measure);

}  // namespace dampward::papers
