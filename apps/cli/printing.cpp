#include "apps/cli/printing.h"

#include <algorithm>
#include <cctype>

#include "adapters/files/messages.h"
#include "adapters/files/sha256.h"

namespace dampward::cli {

Result<Printing> printing_of(const Call& call) {
  if (call.paper != "a4" && call.paper != "letter")
    return Problem{{"command line"}, "--paper " + call.paper, "--paper a4 or --paper letter", ""};
  const auto words = files::sheet_words(call.language);
  if (!words) return words.problems();
  return Printing{call.paper == "letter" ? papers::us_letter : papers::a4, *words};
}

std::string sheet_id(const papers::Pages& pages) {
  std::string id = files::sha256_hex(papers::content_of(pages)).substr(0, 4);
  std::transform(id.begin(), id.end(), id.begin(),
                 [](unsigned char c) { return static_cast<char>(std::toupper(c)); });
  return id;
}

}  // namespace dampward::cli
