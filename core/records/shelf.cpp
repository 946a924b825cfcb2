#include "core/records/shelf.h"

#include <algorithm>
#include <tuple>

#include "core/base/promise.h"

namespace dampward::records {

bool usable(const StockLot& lot, Date day) {
  return !lot.expires || *lot.expires >= day;
}

std::vector<const StockLot*> in_order_of_use(std::span<const StockLot> lots, std::string_view item,
                                             Date day) {
  std::vector<const StockLot*> order;
  for (const StockLot& lot : lots) {
    if (lot.item == item && usable(lot, day)) order.push_back(&lot);
  }
  std::stable_sort(order.begin(), order.end(), [](const StockLot* a, const StockLot* b) {
    const auto key = [](const StockLot& lot) {
      const auto until = lot.expires ? std::chrono::sys_days(*lot.expires) : std::chrono::sys_days::max();
      return std::make_tuple(until, !lot.opened.has_value(), lot.lot.text);
    };
    return key(*a) < key(*b);
  });
  return order;
}

Shelf::Shelf(std::span<const StockLot> lots, std::string_view item) {
  for (const StockLot& lot : lots) {
    if (lot.item == item) lots_.push_back(lot);
  }
}

Drawn Shelf::draw(Volume amount, Date day) {
  DAMPWARD_PROMISE(amount >= Volume{}, "nobody draws less than nothing");
  Drawn drawn{{}, amount};
  if (lots_.empty()) return drawn;
  for (const StockLot* next : in_order_of_use(lots_, lots_.front().item, day)) {
    StockLot& lot = lots_[static_cast<std::size_t>(next - lots_.data())];
    const Volume taken = std::min(lot.amount, drawn.missing);
    if (taken <= Volume{}) continue;
    lot.amount -= taken;
    drawn.missing -= taken;
    drawn.draws.push_back({lot.lot, taken});
  }
  return drawn;
}

}  // namespace dampward::records
