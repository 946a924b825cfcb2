#include <unordered_map>

#include "core/referee/detail/rules.h"

namespace dampward::referee {
namespace {

// Who is within call, each skill asked for once.
class Watchers {
 public:
  explicit Watchers(const Case& open) : open_(open) {}
  std::optional<Minute> first_unwatched(Span span, const std::string& skill) {
    const auto [known, fresh] = on_shift_.try_emplace(skill);
    if (fresh) known->second = open_.on_shift_with(skill);
    return first_uncovered(span, known->second);
  }

 private:
  const Case& open_;
  std::unordered_map<std::string, std::vector<Span>> on_shift_;
};

void judge_oven(const Case& open, const LoadWork& work, Watchers& watchers, Violations& found) {
  const Operation* bake = open.operation(work.load->bake);
  // What its fixed work makes of the heat by itself has happened, or will.
  for (const Span& hot : without(*work.heat, work.fixed_heat)) {
    if (bake->skill) {
      if (const auto alone = watchers.first_unwatched(hot, *bake->skill)) {
        found.push_back(
            {"watch",
             {work.load->id, work.load->bake},
             format("The oven of load \"{}\" is hot in minute {}, but nobody with the skill \"{}\" is on "
                    "shift.",
                    work.load->id, *alone, *bake->skill)});
      }
    }
    if (!work.oven) continue;
    if (const auto dark = first_uncovered(hot, work.oven->powered)) {
      found.push_back({"power",
                       {work.oven->id, work.load->id},
                       format("Oven \"{}\" is hot with load \"{}\" in minute {}, but has no power.",
                              work.oven->id, work.load->id, *dark)});
    }
  }
}

}  // namespace

void judge_heat(const Case& open, Violations& found) {
  Watchers watchers(open);
  for (const Work& work : open.works()) {
    if (work.fixed || work.what->attendance != Attendance::watched || !work.what->skill) continue;
    if (open.is_bake(work.what->id)) continue;  // its oven is watched longer
    const auto alone = watchers.first_unwatched(work.when(), *work.what->skill);
    if (!alone) continue;
    found.push_back({"watch",
                     {work.what->id},
                     format("\"{}\" runs in minute {}, but nobody with the skill \"{}\" is on shift.",
                            work.what->id, *alone, *work.what->skill)});
  }
  for (const LoadWork& work : open.loads()) {
    if (work.heat) judge_oven(open, work, watchers, found);
  }
}

}  // namespace dampward::referee
