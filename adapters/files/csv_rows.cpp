#include "adapters/files/csv_rows.h"

#include <charconv>
#include <cmath>

#include "core/base/format.h"
#include "core/base/text.h"

namespace dampward::files {

RowReader::RowReader(const CsvSheet& sheet, const CsvColumns& columns, const CsvRow& row, Proof& proof)
    : sheet_(sheet), columns_(columns), row_(row), proof_(proof) {}

Place RowReader::place(std::string_view column) const {
  const CsvCell cell = columns_.cell(row_, column);
  return {sheet_.file, cell.line, cell.column};
}

std::vector<std::string> RowReader::list(std::string_view column, std::string_view separators) const {
  std::vector<std::string> pieces;
  const std::string all = text(column);
  for (std::size_t at = 0; at <= all.size();) {
    const std::size_t end = std::min(all.find_first_of(separators, at), all.size());
    const std::string_view piece = trimmed(std::string_view(all).substr(at, end - at));
    if (!piece.empty()) pieces.emplace_back(piece);
    at = end + 1;
  }
  return pieces;
}

std::optional<double> RowReader::number(std::string_view column) {
  const std::string written = text(column);
  if (written.empty()) return std::nullopt;
  double value = 0;
  const auto [end, error] = std::from_chars(written.data(), written.data() + written.size(), value);
  if (error != std::errc{} || end != written.data() + written.size() || !std::isfinite(value)) {
    fault(column, "which is no number", "a plain number");
    return std::nullopt;
  }
  return value;
}

bool RowReader::yes(std::string_view column) {
  const std::string word = lower_case(text(column));
  if (word != "yes" && word != "no" && !word.empty())
    fault(column, "which is neither yes nor no", "yes or no");
  return word == "yes";
}

void RowReader::fault(std::string_view column, std::string_view why, std::string_view expected,
                      std::string_view next) {
  proof_.faults.push_back({place(column), format("{} \"{}\", {}", column, text(column), why),
                           std::string(expected), std::string(next)});
}

void RowReader::warn(std::string_view column, std::string_view why, std::string_view expected,
                     std::string_view next) {
  proof_.warnings.push_back({place(column), format("{} \"{}\", {}", column, text(column), why),
                             std::string(expected), std::string(next)});
}

bool RowReader::needed(std::string_view column, std::string_view expected) {
  if (!blank(column)) return true;
  proof_.faults.push_back({place(column), format("no {}", column), std::string(expected), ""});
  return false;
}

std::string RowReader::with_unit(std::string_view column) const {
  const std::string written = text(column);
  const std::string unit = columns_.unit(column);
  const bool bare = !written.empty() && written.back() >= '0' && written.back() <= '9';
  return bare && !unit.empty() ? written + " " + unit : written;
}

void RowReader::refuse(std::string_view column, Problem problem) {
  problem.place = place(column);
  problem.found = format("{} {}", column, problem.found);
  proof_.faults.push_back(std::move(problem));
}

}  // namespace dampward::files
