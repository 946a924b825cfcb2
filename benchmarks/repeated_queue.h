#pragma once

#include "core/base/format.h"
#include "core/records/records.h"

// A queue as long as a bench asks for: the units of another in turn, each with a serial of its own and no due date.
namespace dampward {

struct Repeated final : records::RecordStore {
  records::Queue units;
  Result<records::Queue> queue() const override { return units; }
  Result<std::vector<records::StockLot>> stock() const override { return std::vector<records::StockLot>{}; }
  Result<std::vector<records::AirReading>> air() const override { return std::vector<records::AirReading>{}; }
};

inline Repeated repeated(const records::Queue& queue, std::size_t count) {
  Repeated store;
  store.units.starts = queue.starts;
  for (std::size_t i = 0; i < count; ++i) {
    records::QueuedUnit unit = queue.units[i % queue.units.size()];
    unit.serial = UnitId(format("{}-{}", unit.serial.text, i));
    unit.due.reset();
    store.units.units.push_back(unit);
  }
  return store;
}

}  // namespace dampward
