#pragma once

#include <optional>
#include <string>
#include <vector>

#include "adapters/files/csv_rows.h"
#include "adapters/files/shipped.h"
#include "adapters/files/words.h"

namespace dampward::files::detail {

// One carried CSV file as rows; every fault of the sheet itself goes to the proof.
class ShippedSheet {
 public:
  ShippedSheet(const std::string& path, const std::vector<std::string>& columns, Proof& proof);

  template <class Read>
  void each_row(Read&& read) {
    for (const CsvRow& row : sheet_.rows) {
      RowReader reader(sheet_, columns_, row, proof_);
      read(reader);
    }
  }

 private:
  CsvSheet sheet_;
  Proof& proof_;
  CsvColumns columns_;
};

// The mark in a column; a figure without one counts as doubtful.
Mark mark_of(RowReader& row, std::string_view column);

// A figure with unit from `column`, its mark and source from `column`_mark and `column`_source.
template <class T>
std::optional<Figure<T>> figure_of(RowReader& row, const std::string& column) {
  const auto range = row.range<T>(column);
  if (!range) return std::nullopt;
  return Figure<T>{*range, mark_of(row, column + "_mark"), row.text(column + "_source"), ""};
}

// "xylene=30..45..60 %;mineral_spirits=40..55..70 %". Typical shares must add to 100 % within 1 %.
std::vector<materials::SolventPart> composition_of(RowReader& row, std::string_view column,
                                                   const materials::SolventTable& solvents);

// Ids and rows that stand twice in one file are faults of that file.
void check_unique(const std::string& file, const std::vector<std::string>& ids, Proof& proof);

std::vector<materials::Material> read_materials(Proof& proof);
std::vector<materials::Solvent> read_solvents(Proof& proof);
std::vector<ShippedLiquid> read_liquids(const materials::SolventTable& solvents, Proof& proof);
std::vector<materials::Lacquer> read_lacquers(const materials::SolventTable& solvents, Proof& proof);
std::vector<hazards::Hazard> read_hazards(Proof& proof);
std::vector<drying::Wall> read_walls(Proof& proof);
std::vector<Source> read_sources(Proof& proof);
std::vector<TomlNode> read_archetypes(Proof& proof);

}  // namespace dampward::files::detail
