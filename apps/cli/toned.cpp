#include "apps/cli/toned.h"

#include <algorithm>

namespace dampward::cli {

std::string as_page(const std::vector<Line>& lines, bool colour) {
  std::string page;
  for (const Line& line : lines) {
    if (!colour || line.tone == Tone::plain) {
      page += line.text + "\n";
      continue;
    }
    const std::size_t toned = std::min(line.toned, line.text.size());
    page += (line.tone == Tone::stop ? "\x1b[1;31m" : "\x1b[1m") + line.text.substr(0, toned) + "\x1b[0m" +
            line.text.substr(toned) + "\n";
  }
  return page;
}

}  // namespace dampward::cli
