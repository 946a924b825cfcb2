#pragma once

#include <filesystem>
#include <memory>

#include "adapters/files/proof.h"
#include "core/base/result.h"
#include "core/records/records.h"
#include "workbench/workshop.h"

namespace dampward::files {

// The shipped tables as a workshop that has nothing of its own: no place, no ovens, no crew, no lacquer in use, every archetype.
workbench::Workshop shipped_workshop();

// Everything the *.toml files at the top of a shop folder say, joined with the shipped tables. Problems: all faults of all files
// at once. No file is ever written.
Result<workbench::Workshop> read_workshop(const std::filesystem::path& folder);

// The daily records of a shop folder: queue.csv, stock.csv, air.csv, log.jsonl. A missing queue is a fault; no stock, air and
// log are empty.
// Each call reads the file anew.
class FolderRecords final : public records::RecordStore {
 public:
  // The workshop tells which kinds and liquids rows may name.
  FolderRecords(std::filesystem::path folder, const workbench::Workshop& workshop);
  ~FolderRecords() override;

  Result<records::Queue> queue() const override;
  Result<std::vector<records::StockLot>> stock() const override;
  Result<std::vector<records::AirReading>> air() const override;
  Result<std::vector<history::Event>> log() const override;

 private:
  struct Known;
  std::filesystem::path folder_;
  std::unique_ptr<const Known> known_;
};

// All that is wrong or suspicious in every file of a shop folder.
Proof proofread(const std::filesystem::path& folder);

}  // namespace dampward::files
