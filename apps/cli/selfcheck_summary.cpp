#include "apps/cli/selfcheck_summary.h"

#include <algorithm>

#include "apps/cli/page_text.h"
#include "core/base/format.h"

namespace dampward::cli {
namespace {

struct Tally {
  std::string model;
  int read = 0, memory = 0, out = 0;
};

std::vector<Tally> tallies(const workbench::SelfCheck& check) {
  std::vector<Tally> all;
  for (const auto& row : check.checks) {
    auto tally = std::find_if(all.begin(), all.end(), [&](const Tally& t) { return t.model == row.model; });
    if (tally == all.end()) tally = all.insert(all.end(), Tally{row.model});
    (row.read ? tally->read : tally->memory) += 1;
    tally->out += row.within ? 0 : 1;
  }
  return all;
}

}  // namespace

std::vector<std::string> selfcheck_summary(const workbench::SelfCheck& check) {
  std::vector<std::string> lines{" model                      read   from memory   out of tolerance"};
  for (const Tally& tally : tallies(check)) {
    lines.push_back(
        format(" {} {:>4} {:>13} {:>18}", fitted(tally.model, 26), tally.read, tally.memory, tally.out));
  }
  lines.push_back(
      format("{} published values whose source was read, {} of them out of tolerance; {} more from memory, "
             "shown and not counted",
             check.rows, check.out_of_tolerance, check.from_memory));
  for (const auto& row : check.checks) {
    if (row.within) continue;
    for (const auto& line :
         wrapped(format(" OUT: {} ({}): published {} {}, computed {}, tolerance {}. {}", row.id, row.source,
                        row.published, row.unit, row.computed, row.tolerance, row.read ? "" : "From memory."),
                 80, 3)) {
      lines.push_back(line);
    }
  }
  return lines;
}

}  // namespace dampward::cli
