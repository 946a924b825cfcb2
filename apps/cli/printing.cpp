#include "apps/cli/printing.h"

#include "adapters/files/messages.h"

namespace dampward::cli {

Result<Printing> printing_of(const Call& call) {
  if (call.paper != "a4" && call.paper != "letter")
    return Problem{{"command line"}, "--paper " + call.paper, "--paper a4 or --paper letter", ""};
  const auto words = files::sheet_words(call.language);
  if (!words) return words.problems();
  return Printing{call.paper == "letter" ? papers::us_letter : papers::a4, *words};
}

}  // namespace dampward::cli
