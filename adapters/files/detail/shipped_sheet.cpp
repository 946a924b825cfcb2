#include <set>

#include "adapters/files/detail/shipped_tables.h"
#include "core/base/format.h"
#include "core/base/text.h"
#include "core/materials/composition.h"
#include "embedded_data.h"

namespace dampward::files::detail {
namespace {

CsvSheet carried(const std::string& path, Proof& proof) {
  const std::string_view text = find_embedded(path);
  if (text.data() == nullptr) {
    proof.faults.push_back({{path}, "no such carried file", "a table of data/", ""});
    return {path, ',', false, {}, {}, {}};
  }
  const auto sheet = read_csv(path, text);
  if (sheet) return *sheet;
  proof.faults.insert(proof.faults.end(), sheet.problems().begin(), sheet.problems().end());
  return {path, ',', false, {}, {}, {}};
}

}  // namespace

ShippedSheet::ShippedSheet(const std::string& path, const std::vector<std::string>& columns, Proof& proof)
    : sheet_(carried(path, proof)), proof_(proof), columns_(sheet_, columns, {}, proof) {
  check_row_lengths(sheet_, proof);
}

Mark mark_of(RowReader& row, std::string_view column) {
  return row.choice(column, mark_words).value_or(Mark::doubtful);
}

std::vector<materials::SolventPart> composition_of(RowReader& row, std::string_view column,
                                                   const materials::SolventTable& solvents) {
  std::vector<materials::SolventPart> parts;
  for (const std::string& piece : row.list(column)) {
    const std::size_t equals = std::min(piece.find('='), piece.size());
    const std::string name(trimmed(std::string_view(piece).substr(0, equals)));
    const auto share =
        range_from_text<MassShare>(std::string_view(piece).substr(std::min(equals + 1, piece.size())));
    if (share) {
      parts.push_back({SolventId(name), *share});
    } else {
      row.fault(column, share.problems().front().found, share.problems().front().expected);
    }
  }
  for (const Problem& problem : materials::faults_of_composition(parts, solvents.rows(), row.text("id"))) {
    row.fault(column, problem.found, problem.expected, problem.next);
  }
  return parts;
}

void check_unique(const std::string& file, const std::vector<std::string>& ids, Proof& proof) {
  std::set<std::string> seen;
  for (const std::string& id : ids) {
    if (id.empty()) proof.faults.push_back({{file}, "a row without id", "an id of its own for each row", ""});
    if (!seen.insert(id).second)
      proof.faults.push_back({{file}, format("the id \"{}\" twice", id), "each id once", ""});
  }
}

}  // namespace dampward::files::detail
