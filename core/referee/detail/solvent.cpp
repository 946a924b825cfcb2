#include "core/referee/detail/rules.h"

namespace dampward::referee {
namespace {

// An oven near solvent work that is hot or cooling.
struct Hot {
  const LoadWork* work;
  Span when;
  std::optional<Span> fixed;  // the part its fixed work makes by itself
};

std::vector<Hot> hot_ovens(const Case& open) {
  std::vector<Hot> list;
  for (const LoadWork& work : open.loads()) {
    if (!work.heat || !work.oven || !work.oven->near_solvent) continue;
    Hot hot{&work, {work.heat->from, work.heat->to + work.oven->cools}, {}};
    if (work.fixed_bake && work.fixed_heat)
      hot.fixed = Span{work.fixed_heat->from, work.fixed_heat->to + work.oven->cools};
    list.push_back(hot);
  }
  return list;
}

}  // namespace

void judge_solvent(const Case& open, Violations& found) {
  const std::vector<Hot> ovens = hot_ovens(open);
  for (const Work& wet : open.works()) {
    if (!wet.what->solvent) continue;
    const Span in_the_open{wet.at->start, wet.at->end + wet.what->clears};
    for (const Hot& hot : ovens) {
      for (const Span& judged : without(hot.when, wet.fixed ? hot.fixed : std::nullopt)) {
        const Span both = common(in_the_open, judged);
        if (empty(both)) continue;
        found.push_back(
            {"solvent",
             {wet.what->id, hot.work->oven->id, hot.work->load->id},
             format("Solvent of \"{}\" is in the open from minute {} to {}, while oven \"{}\" is hot or "
                    "cooling with load \"{}\".",
                    wet.what->id, both.from, both.to, hot.work->oven->id, hot.work->load->id)});
      }
    }
  }
}

}  // namespace dampward::referee
