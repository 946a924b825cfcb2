#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "adapters/files/shop_folder.h"
#include "core/records/records.h"
#include "workbench/plan.h"
#include "workbench/workshop.h"

namespace dampward::workbench::test {

// The shipped demo workshop, read once; tests change copies of it.
inline const Workshop& demo_workshop() {
  static const Workshop workshop =
      files::read_workshop(std::filesystem::path(DAMPWARD_SOURCE_DIR) / "data/demo").value();
  return workshop;
}

// Records held in memory.
struct HandedRecords final : records::RecordStore {
  records::Queue units;
  std::vector<records::StockLot> lots;
  std::vector<records::AirReading> readings;
  std::vector<history::Event> events;

  Result<records::Queue> queue() const override { return units; }
  Result<std::vector<records::StockLot>> stock() const override { return lots; }
  Result<std::vector<records::AirReading>> air() const override { return readings; }
  Result<std::vector<history::Event>> log() const override { return events; }
};

inline HandedRecords demo_records() {
  const files::FolderRecords folder(std::filesystem::path(DAMPWARD_SOURCE_DIR) / "data/demo",
                                    demo_workshop());
  HandedRecords records;
  records.units = folder.queue().value();
  records.lots = folder.stock().value();
  records.readings = folder.air().value();
  return records;
}

inline Plan plan_of(const Workshop& workshop, const HandedRecords& records) {
  return make_plan(workshop, records, {}).value();
}

}  // namespace dampward::workbench::test
