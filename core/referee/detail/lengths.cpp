#include "core/referee/detail/rules.h"

namespace dampward::referee {
namespace {

// The breaks that stop this work: those of any of its people.
std::vector<Span> pauses_of(const Case& open, const Work& work) {
  std::vector<Span> pauses;
  for (const std::string& id : work.at->people) {
    const Person* person = open.person(id);
    if (!person) continue;
    for (const Span& rest : open.breaks(*person)) {
      if (overlap(rest, work.when())) pauses.push_back(rest);
    }
  }
  return merged(std::move(pauses));
}

// Minutes worked from start to end; none where the last minute is a pause, for then it ended before.
void judge_length(const Case& open, const Work& work, Violations& found) {
  const auto [start, end] = work.when();
  const bool pauses_count = work.what->attendance == Attendance::attended && work.what->pausable;
  const std::vector<Span> pauses = pauses_count ? pauses_of(open, work) : std::vector<Span>{};
  const Minute worked = end - start - minutes_within(work.when(), pauses);
  const bool ends_in_pause = first_covered({end - 1, end}, pauses).has_value();
  if (worked == work.what->length && !ends_in_pause) return;
  found.push_back(
      {"length",
       {work.what->id},
       format("\"{}\" runs from minute {} to {}, {} without pauses{}, but it takes {}.", work.what->id, start,
              end, worked, ends_in_pause ? " and ending in one" : "", work.what->length)});
}

}  // namespace

void judge_lengths(const Case& open, Violations& found) {
  const Minute horizon = open.problem.horizon, now = open.problem.now;
  for (const Work& work : open.works()) {
    if (work.fixed) continue;
    const auto [start, end] = work.when();
    judge_length(open, work, found);
    if (start < 0 || start > horizon || end < 0 || end > horizon) {
      found.push_back({"outside",
                       {work.what->id},
                       format("\"{}\" runs from minute {} to {}, but the plan reaches from 0 to {}.",
                              work.what->id, start, end, horizon)});
    }
    if (start < now) {
      found.push_back(
          {"past",
           {work.what->id},
           format("\"{}\" starts in minute {}, but it is minute {} already.", work.what->id, start, now)});
    }
  }
}

}  // namespace dampward::referee
