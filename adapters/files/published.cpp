#include "adapters/files/published.h"

#include <charconv>

#include "adapters/files/csv.h"
#include "embedded_data.h"

namespace dampward::files {
namespace {

double number(const CsvSheet& sheet, const CsvCell& cell, std::string_view column, Proof& proof) {
  double value = 0;
  const auto [end, error] = std::from_chars(cell.text.data(), cell.text.data() + cell.text.size(), value);
  if (error != std::errc() || end != cell.text.data() + cell.text.size()) {
    proof.faults.push_back({{sheet.file, cell.line, cell.column},
                            "\"" + cell.text + "\" as " + std::string(column),
                            "a number with a decimal point",
                            ""});
  }
  return value;
}

// Whether the cell says the first of two words.
bool first_of(const CsvSheet& sheet, const CsvCell& cell, std::string_view first, std::string_view second,
              Proof& proof) {
  if (cell.text != first && cell.text != second) {
    proof.faults.push_back({{sheet.file, cell.line, cell.column},
                            "\"" + cell.text + "\"",
                            std::string(first) + " or " + std::string(second),
                            ""});
  }
  return cell.text == first;
}

}  // namespace

Result<std::vector<workbench::PublishedRow>> read_published(const std::string& file, std::string_view text) {
  const Result<CsvSheet> sheet = read_csv(file, text);
  if (!sheet) return sheet.problems();
  const std::vector<std::string> required = {
      "id",        "model",          "quantity",         "inputs", "unit",  "published",
      "tolerance", "tolerance_kind", "tolerance_reason", "source", "status"};
  const std::vector<std::string> optional = {"note"};
  Proof proof;
  const CsvColumns columns(*sheet, required, optional, proof);
  check_row_lengths(*sheet, proof);

  std::vector<workbench::PublishedRow> rows;
  for (const CsvRow& row : sheet->rows) {
    const auto text_of = [&](std::string_view column) { return columns.cell(row, column).text; };
    workbench::PublishedRow published;
    published.place = {file, columns.cell(row, "id").line, 0};
    published.id = text_of("id");
    published.model = text_of("model");
    published.quantity = text_of("quantity");
    published.inputs = text_of("inputs");
    published.unit = text_of("unit");
    published.published = number(*sheet, columns.cell(row, "published"), "published", proof);
    published.tolerance = number(*sheet, columns.cell(row, "tolerance"), "tolerance", proof);
    published.relative = first_of(*sheet, columns.cell(row, "tolerance_kind"), "rel", "abs", proof);
    published.tolerance_reason = text_of("tolerance_reason");
    published.source = text_of("source");
    published.read = first_of(*sheet, columns.cell(row, "status"), "read", "memory", proof);
    published.note = text_of("note");
    rows.push_back(std::move(published));
  }
  if (!proof.faults.empty()) return proof.faults;
  return rows;
}

Result<std::vector<workbench::PublishedRow>> shipped_published() {
  std::vector<workbench::PublishedRow> all;
  for (const EmbeddedFile& file : embedded_files()) {
    if (!file.path.starts_with("published/") || !file.path.ends_with(".csv")) continue;
    Result<std::vector<workbench::PublishedRow>> rows =
        read_published("data/" + std::string(file.path), file.text);
    if (!rows) return rows.problems();
    for (workbench::PublishedRow& row : std::move(rows).value()) all.push_back(std::move(row));
  }
  return all;
}

}  // namespace dampward::files
