#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "adapters/files/proof.h"
#include "core/records/records.h"

// The three sheets that change daily, from their text. Each reads on after a fault, so that all are told at once.
namespace dampward::files::detail {

// What the rows may name.
struct KnownIds {
  std::vector<std::string> kinds;
  std::vector<std::string> liquids;  // lacquers, thinners, cleaners
  bool complete = true;              // false: some could not be read, so an unknown name may be right
};

records::Queue read_queue(const std::string& file, std::string_view text, const KnownIds& known,
                          Proof& proof);
std::vector<records::StockLot> read_stock(const std::string& file, std::string_view text,
                                          const KnownIds& known, Proof& proof);
std::vector<records::AirReading> read_air(const std::string& file, std::string_view text, Proof& proof);

}  // namespace dampward::files::detail
