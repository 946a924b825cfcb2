#pragma once

#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "adapters/files/proof.h"
#include "core/base/result.h"

namespace dampward::files {

// One cell: its text without quotes and outer blanks, and where it begins (line and column count from 1, in letters).
struct CsvCell {
  std::string text;
  int line = 0;
  int column = 0;
};

using CsvRow = std::vector<CsvCell>;

// A sheet as a spreadsheet or a person wrote it.
struct CsvSheet {
  std::string file;
  char separator = ',';
  bool decimal_comma = false;     // some cell holds a number with a decimal comma
  std::vector<CsvCell> comments;  // lines that begin with #, without the #
  CsvRow header;
  std::vector<CsvRow> rows;  // no empty ones
};

// Comma, semicolon or tab, whichever the header line holds most of (or a first line "sep=;"); LF, CR LF or bare CR;
// quotes doubled inside quotes, line breaks allowed there; lines that begin with # are comments.
// `text` is UTF-8 (see as_utf8). Faults: no header line, a quote that never ends, text after a closing quote.
Result<CsvSheet> read_csv(const std::string& file, std::string_view text);

// Which cell of a row belongs to which name. Headers match whatever their case, blanks or underscores; a unit in
// brackets after the name ("temperature (°C)") is the unit of every cell of that column that carries none.
class CsvColumns {
 public:
  // Tells `proof` of missing required columns, columns given twice, and (when it looks like a misspelt one) unknown
  // columns; other unknown columns only warn.
  CsvColumns(const CsvSheet& sheet, std::span<const std::string> required,
             std::span<const std::string> optional, Proof& proof);

  bool has(std::string_view name) const;
  // The cell of a row; an empty one, placed at the row's line, where the column or the cell is missing.
  CsvCell cell(const CsvRow& row, std::string_view name) const;
  // The unit in the header of a column, or an empty text.
  std::string unit(std::string_view name) const;

 private:
  struct Column {
    std::string name, unit;
    std::size_t index;
  };
  const Column* find(std::string_view name) const;
  std::vector<Column> columns_;
};

// Tells `proof` of rows with more filled cells than there are columns.
void check_row_lengths(const CsvSheet& sheet, Proof& proof);

}  // namespace dampward::files
