#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "adapters/files/csv.h"
#include "adapters/files/quantity_text.h"
#include "adapters/files/table_reader.h"

namespace dampward::files {

// One row of a sheet, read cell by cell into typed values. Faults go to the proof with line and column.
class RowReader {
 public:
  RowReader(const CsvSheet& sheet, const CsvColumns& columns, const CsvRow& row, Proof& proof);

  std::string text(std::string_view column) const { return columns_.cell(row_, column).text; }
  bool blank(std::string_view column) const { return text(column).empty(); }
  Place place(std::string_view column) const;
  // The pieces of a cell between separators, none of them empty.
  std::vector<std::string> list(std::string_view column, std::string_view separators = ";") const;

  // A figure with its unit, or with the unit named in the column's header; empty when the cell is blank or at fault.
  template <class T>
  std::optional<T> quantity(std::string_view column) {
    return settled(column, quantity_from_text<T>(with_unit(column), decimal()));
  }
  template <class T>
  std::optional<Range<T>> range(std::string_view column) {
    return settled(column, range_from_text<T>(with_unit(column), decimal()));
  }
  // A plain number, which may be negative.
  std::optional<double> number(std::string_view column);

  template <class E, std::size_t N>
  std::optional<E> choice(std::string_view column, const Word<E> (&words)[N]) {
    if (blank(column)) return std::nullopt;
    std::string known;
    for (const auto& word : words) {
      if (word.word == text(column)) return word.meaning;
      known += (known.empty() ? "" : ", ") + std::string(word.word);
    }
    fault(column, "which is no word for this column", "one of " + known);
    return std::nullopt;
  }
  // yes or no; blank counts as no.
  bool yes(std::string_view column);

  // Tells of a cell: "column "text", why".
  void fault(std::string_view column, std::string_view why, std::string_view expected,
             std::string_view next = "");
  void warn(std::string_view column, std::string_view why, std::string_view expected,
            std::string_view next = "");
  // True when the cell holds something; else a fault.
  bool needed(std::string_view column, std::string_view expected);

 private:
  Decimal decimal() const { return sheet_.decimal_comma ? Decimal::comma : Decimal::either; }
  std::string with_unit(std::string_view column) const;
  template <class V>
  std::optional<V> settled(std::string_view column, const Result<V>& result) {
    if (blank(column)) return std::nullopt;
    if (result) return *result;
    refuse(column, result.problems().front());
    return std::nullopt;
  }
  void refuse(std::string_view column, Problem problem);

  const CsvSheet& sheet_;
  const CsvColumns& columns_;
  const CsvRow& row_;
  Proof& proof_;
};

}  // namespace dampward::files
