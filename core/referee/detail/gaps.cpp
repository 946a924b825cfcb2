#include "core/referee/detail/rules.h"

namespace dampward::referee {

void judge_gaps(const Case& open, Violations& found) {
  for (const Gap& gap : open.problem.gaps) {
    const auto from = open.work(gap.from), to = open.work(gap.to);
    if (!from || !to || (from->fixed && to->fixed)) continue;
    const Minute between = to->at->start - from->at->end;
    const auto say = [&](const char* rule, const char* bound, Minute figure) {
      found.push_back(
          {rule,
           {gap.from, gap.to},
           format("\"{}\" starts {} min after \"{}\" ends, but {}{}at {} {} are allowed.", gap.to, between,
                  gap.from, gap.name.empty() ? "" : gap.name, gap.name.empty() ? "" : ": ", bound, figure)});
    };
    if (between < gap.shortest) say("gap_short", "least", gap.shortest);
    if (gap.longest && between > *gap.longest) say("gap_long", "most", *gap.longest);
  }
}

}  // namespace dampward::referee
