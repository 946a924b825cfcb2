#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/records/records.h"

namespace dampward::records {

// Whether the lot may still be used on that day: its date itself counts.
bool usable(const StockLot& lot, Date day);

// The lots of an item that may be used on that day, in the order to use them: first expired first, those without a date last,
// among equals the opened one first.
std::vector<const StockLot*> in_order_of_use(std::span<const StockLot> lots, std::string_view item, Date day);

// So much of a lot.
struct Draw {
  LotId lot;
  Volume amount;
};
struct Drawn {
  std::vector<Draw> draws;
  Volume missing;  // what no lot could give
};

// One item in stock, drawn from day by day.
class Shelf {
 public:
  Shelf(std::span<const StockLot> lots, std::string_view item);
  // Takes the amount from the lots usable that day, in their order. Promise: not below zero.
  Drawn draw(Volume amount, Date day);

 private:
  std::vector<StockLot> lots_;  // with what is left in them
};

}  // namespace dampward::records
