#include <algorithm>
#include <map>
#include <set>

#include "core/referee/detail/rules.h"
#include "core/referee/detail/shares.h"

namespace dampward::referee {
namespace {

void judge_number(const Work& work, Violations& found) {
  const auto& people = work.at->people;
  const std::int64_t wanted = work.what->attendance == Attendance::attended ? work.what->people : 0;
  const std::set<std::string_view> different(people.begin(), people.end());
  std::string what;
  if (different.size() != people.size()) {
    what = "lists somebody twice";
  } else if (std::int64_t(people.size()) != wanted) {
    what = wanted == 0 ? std::string("needs nobody's hands, but lists people")
                       : format("has {} people, but it takes {}", people.size(), wanted);
  } else {
    return;
  }
  std::vector<std::string> ids = {work.what->id};
  ids.insert(ids.end(), people.begin(), people.end());
  found.push_back({"people", std::move(ids), format("\"{}\" {}.", work.what->id, what)});
}

void judge_skill(const Case& open, const Work& work, Violations& found) {
  if (work.what->attendance != Attendance::attended || !work.what->skill) return;
  for (const std::string& id : work.at->people) {
    const Person* person = open.person(id);
    if (!person || std::count(person->skills.begin(), person->skills.end(), *work.what->skill) > 0) continue;
    found.push_back(
        {"skill",
         {work.what->id, id},
         format("\"{}\" works on \"{}\" without its skill \"{}\".", id, work.what->id, *work.what->skill)});
  }
}

// Fixed work takes its people whatever it is; other work without hands has none to take.
void judge_busy(const Case& open, Violations& found) {
  std::map<std::string_view, std::vector<Share>> days;
  for (const Work& work : open.works()) {
    if (work.what->attendance != Attendance::attended && !work.fixed) continue;
    const std::set<std::string_view> people(work.at->people.begin(), work.at->people.end());
    for (const std::string_view person : people) {
      if (open.person(person)) days[person].push_back({work.when(), 1, work.fixed, work.what->id});
    }
  }
  for (const auto& [person, day] : days) {
    for (const Clash& clash : clashes(day)) {
      found.push_back({"busy",
                       {std::string(person), std::string(clash.first), std::string(clash.second)},
                       format("\"{}\" works on \"{}\" and \"{}\" at once from minute {} to {}.", person,
                              clash.first, clash.second, clash.when.from, clash.when.to)});
    }
  }
}

}  // namespace

void judge_people(const Case& open, Violations& found) {
  for (const Work& work : open.works()) {
    if (work.fixed) continue;
    judge_number(work, found);
    judge_skill(open, work, found);
  }
  judge_busy(open, found);
}

}  // namespace dampward::referee
