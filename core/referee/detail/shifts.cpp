#include <set>

#include "core/referee/detail/rules.h"

namespace dampward::referee {
namespace {

// Not inside one of the person's shifts.
void judge_shift(const Work& work, const Person& person, Violations& found) {
  const auto gone = first_uncovered(work.when(), person.shifts);
  if (!gone) return;
  found.push_back({"shift",
                   {work.what->id, person.id},
                   format("\"{}\" works on \"{}\" from minute {} to {}, but is not on shift in minute {}.",
                          person.id, work.what->id, work.at->start, work.at->end, *gone)});
}

// In a break, or starting in one where the work can pause.
void judge_break(const Case& open, const Work& work, const Person& person, Violations& found) {
  const Minute start = work.at->start;
  const Span judged = work.what->pausable ? Span{start, start + 1} : work.when();
  const auto rest = first_covered(judged, open.breaks(person));
  if (!rest) return;
  found.push_back({"break",
                   {work.what->id, person.id},
                   format("\"{}\" {} on \"{}\" in minute {}, in a break.", person.id,
                          work.what->pausable ? "starts" : "works", work.what->id, *rest)});
}

}  // namespace

void judge_shifts(const Case& open, Violations& found) {
  for (const Work& work : open.works()) {
    if (work.fixed || work.what->attendance != Attendance::attended) continue;
    const std::set<std::string_view> people(work.at->people.begin(), work.at->people.end());
    for (const std::string_view id : people) {
      const Person* person = open.person(id);
      if (!person) continue;
      judge_shift(work, *person, found);
      judge_break(open, work, *person, found);
    }
  }
}

}  // namespace dampward::referee
