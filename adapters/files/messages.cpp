#include "adapters/files/messages.h"

#include <algorithm>

#include "adapters/files/csv.h"
#include "core/base/format.h"
#include "core/base/text.h"
#include "embedded_data.h"

namespace dampward::files {
namespace {

using Sentences = std::map<std::string, std::string, std::less<>>;

// The sentences of one table in one language, added to those of the tables before it.
void add(const std::string& table, std::string_view text, const std::string& language, Sentences& sentences,
         Problems& wrong) {
  const auto sheet = read_csv(table, text);
  if (!sheet) {
    wrong.insert(wrong.end(), sheet.problems().begin(), sheet.problems().end());
    return;
  }
  const auto column = std::find_if(sheet->header.begin(), sheet->header.end(),
                                   [&](const CsvCell& cell) { return cell.text == language; });
  const auto at = static_cast<std::size_t>(column - sheet->header.begin());
  for (const CsvRow& row : sheet->rows) {
    const std::string& key = row.front().text;
    if (at >= row.size() || row[at].text.empty())
      wrong.push_back(
          {{table, row.front().line, 0}, format("no {} for {}", language, key), "a translation", ""});
    else if (!sentences.emplace(key, row[at].text).second)
      wrong.push_back(
          {{table, row.front().line, 0}, format("{} a second time", key), "a key of its own", ""});
  }
}

}  // namespace

std::vector<std::string> sheet_languages() {
  return {"en", "es", "fr", "id"};
}

Result<papers::Words> sheet_words(const std::string& language) {
  const std::vector<std::string> known = sheet_languages();
  if (std::find(known.begin(), known.end(), language) == known.end())
    return Problem{
        {"command line"}, "--lang " + language, "one of " + listed(known), did_you_mean(language, known)};
  Sentences sentences;
  Problems wrong;
  for (const EmbeddedFile& file : embedded_files()) {
    if (file.path.starts_with("messages/"))
      add(std::string(file.path), file.text, language, sentences, wrong);
  }
  if (!wrong.empty()) return wrong;
  return papers::Words(std::move(sentences), language == known.front());
}

}  // namespace dampward::files
