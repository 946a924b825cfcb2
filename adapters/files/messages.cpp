#include "adapters/files/messages.h"

#include <algorithm>

#include "adapters/files/csv.h"
#include "core/base/format.h"
#include "core/base/text.h"
#include "embedded_data.h"

namespace dampward::files {

namespace {

constexpr const char* table = "messages/sheets.csv";

}  // namespace

std::vector<std::string> sheet_languages() {
  return {"en", "es", "fr", "id"};
}

Result<papers::Words> sheet_words(const std::string& language) {
  const std::vector<std::string> known = sheet_languages();
  if (std::find(known.begin(), known.end(), language) == known.end())
    return Problem{
        {"command line"}, "--lang " + language, "one of " + listed(known), did_you_mean(language, known)};
  const auto sheet = read_csv(table, find_embedded(table));
  if (!sheet) return sheet.problems();
  const auto column = std::find_if(sheet->header.begin(), sheet->header.end(),
                                   [&](const CsvCell& cell) { return cell.text == language; });
  std::map<std::string, std::string, std::less<>> sentences;
  Problems missing;
  for (const CsvRow& row : sheet->rows) {
    const std::size_t at = static_cast<std::size_t>(column - sheet->header.begin());
    const std::string& key = row.front().text;
    if (at >= row.size() || row[at].text.empty())
      missing.push_back(
          {{table, row.front().line, 0}, format("no {} for {}", language, key), "a translation", ""});
    else
      sentences[key] = row[at].text;
  }
  if (!missing.empty()) return missing;
  return papers::Words(std::move(sentences), language == known.front());
}

}  // namespace dampward::files
