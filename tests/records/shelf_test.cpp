#include "core/records/shelf.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <numeric>

using namespace dampward;
using namespace dampward::records;
using doctest::Approx;

namespace {

Date march(int d) {
  return Date(std::chrono::sys_days(std::chrono::year(2027) / 3 / 1) + std::chrono::days(d - 1));
}

StockLot lot(const std::string& name, double litres, std::optional<Date> expires, bool opened = false) {
  StockLot lot;
  lot.lot = LotId(name);
  lot.item = "varnish";
  lot.amount = litres * litre;
  lot.expires = expires;
  if (opened) lot.opened = march(1);
  return lot;
}

std::vector<std::string> names(const std::vector<const StockLot*>& lots) {
  std::vector<std::string> names;
  for (const StockLot* lot : lots) names.push_back(lot->lot.text);
  return names;
}

// Slow and obvious: whether the days' demands can be met at all, trying every lot for every litre in turn.
bool can_be_met(std::vector<StockLot> lots, const std::vector<std::pair<int, int>>& demands, std::size_t at) {
  if (at == demands.size()) return true;
  const auto [day, litres] = demands[at];
  if (litres == 0) return can_be_met(lots, demands, at + 1);
  for (StockLot& lot : lots) {
    if (lot.amount < 0.5 * litre || !usable(lot, march(day))) continue;
    auto rest = demands;
    --rest[at].second;
    lot.amount -= 1 * litre;
    if (can_be_met(lots, rest, at)) return true;
    lot.amount += 1 * litre;
  }
  return false;
}

}  // namespace

TEST_CASE(
    "the lot that expires first is used first, one without a date last, an opened one before a full one") {
  const std::vector<StockLot> lots = {lot("no date", 1, {}), lot("late", 1, march(20)),
                                      lot("soon", 1, march(10)), lot("soon, opened", 1, march(10), true),
                                      lot("past", 1, march(2))};
  CHECK(names(in_order_of_use(lots, "varnish", march(3))) ==
        std::vector<std::string>{"soon, opened", "soon", "late", "no date"});
  CHECK(names(in_order_of_use(lots, "thinner", march(3))).empty());
}

TEST_CASE("a lot may be used on the day it expires and not the day after") {
  CHECK(usable(lot("a", 1, march(5)), march(5)));
  CHECK_FALSE(usable(lot("a", 1, march(5)), march(6)));
}

TEST_CASE("a lot that expires half-way serves the days before") {
  const std::vector<StockLot> lots = {lot("late", 5, march(30)), lot("soon", 2, march(4))};
  Shelf shelf(lots, "varnish");
  const Drawn first = shelf.draw(1.5 * litre, march(3));
  REQUIRE(first.draws.size() == 1);
  CHECK(first.draws[0].lot.text == "soon");
  const Drawn second = shelf.draw(1 * litre, march(5));
  REQUIRE(second.draws.size() == 1);
  CHECK(second.draws[0].lot.text == "late");
  CHECK(shelf.draw(10 * litre, march(6)).missing.in(litre) == Approx(6));
}

TEST_CASE("first expired first meets every demand that any order of lots could meet") {
  const bool held = rc::check([] {
    std::vector<StockLot> lots;
    const int count = *rc::gen::inRange(1, 4);
    for (int i = 0; i < count; ++i) {
      const int expires = *rc::gen::inRange(0, 7);
      lots.push_back(lot(std::string(1, static_cast<char>('a' + i)), *rc::gen::inRange(0, 4),
                         expires == 0 ? std::nullopt : std::optional(march(expires))));
    }
    std::vector<std::pair<int, int>> demands;
    for (int day = 1; day <= 5; ++day) demands.emplace_back(day, *rc::gen::inRange(0, 3));
    Shelf shelf(lots, "varnish");
    Volume missing;
    for (const auto& [day, litres] : demands) missing += shelf.draw(litres * litre, march(day)).missing;
    RC_ASSERT((missing < 0.5 * litre) == can_be_met(lots, demands, 0));
  });
  CHECK(held);
}
