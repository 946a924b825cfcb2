#pragma once

#include "core/records/records.h"
#include "workbench/window_answer.h"

namespace dampward::workbench {

// The records of a shop as if one reading of the air had just been taken at the place where lacquer goes on.
class SteadyAir final : public records::RecordStore {
 public:
  SteadyAir(const records::RecordStore& shop, std::string place, WindowQuestion::Air air)
      : shop_(shop), place_(std::move(place)), air_(air) {}

  Result<records::Queue> queue() const override { return shop_.queue(); }
  Result<std::vector<records::StockLot>> stock() const override { return shop_.stock(); }
  Result<std::vector<records::AirReading>> air() const override {
    const auto queue = shop_.queue();
    if (!queue) return queue.problems();
    if (!queue->starts) return std::vector<records::AirReading>{};
    return std::vector<records::AirReading>{{*queue->starts, place_, air_.temperature, air_.humidity, {}}};
  }

 private:
  const records::RecordStore& shop_;
  std::string place_;
  WindowQuestion::Air air_;
};

}  // namespace dampward::workbench
