#include "workbench/stock_sheets.h"

#include <algorithm>

namespace dampward::workbench {
namespace {

// The first pot it goes into.
std::optional<Instant> first_use(const Plan& plan, const std::string& item) {
  for (const MixedPot& pot : plan.mixing) {
    const bool in_it = std::any_of(pot.lots.begin(), pot.lots.end(),
                                   [&](const PotShare& share) { return share.item == item; });
    if (in_it || pot.missing > Volume{}) return pot.mix;
  }
  return std::nullopt;
}

// How often the stock covers the worst; what lasts least stands first.
double covered(const papers::StockSheet::Item& item) {
  return item.needed.high > Volume{} ? item.in_stock / item.needed.high : 1e9;
}

}  // namespace

std::vector<papers::StockSheet> stock_sheets(const Plan& plan) {
  if (plan.stock.empty()) return {};
  papers::StockSheet sheet;
  sheet.shop = plan.shop;
  sheet.from = plan.from;
  sheet.clock = plan.clock;
  for (const StockNeed& need : plan.stock) {
    papers::StockSheet::Item item{need.name, need.needed, need.in_stock, need.to_get, need.is_short, {}, {}};
    item.first_use = first_use(plan, need.item);
    for (const StockNeed::Lot& lot : need.shelf)
      item.lots.push_back({lot.lot.text, lot.left, lot.use_by, lot.expired});
    sheet.items.push_back(std::move(item));
  }
  std::stable_sort(sheet.items.begin(), sheet.items.end(), [](const auto& a, const auto& b) {
    if (a.is_short != b.is_short) return a.is_short;
    return covered(a) < covered(b);
  });
  return {sheet};
}

}  // namespace dampward::workbench
