#pragma once

#include "core/records/records.h"

namespace dampward::workbench {

// The records of a shop as if nothing but so many units of one kind waited, with nothing found on them and no log.
class OneKind final : public records::RecordStore {
 public:
  OneKind(const records::RecordStore& shop, KindId kind, int count);

  Result<records::Queue> queue() const override;
  Result<std::vector<records::StockLot>> stock() const override { return shop_.stock(); }
  Result<std::vector<records::AirReading>> air() const override { return shop_.air(); }

 private:
  const records::RecordStore& shop_;
  KindId kind_;
  int count_;
};

}  // namespace dampward::workbench
