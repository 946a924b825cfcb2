#include <algorithm>
#include <unordered_map>

#include "core/referee/detail/rules.h"

namespace dampward::referee {
namespace {

// The end of the unit's last operation that counts for its due minute.
std::optional<Minute> finish_of(const Case& open, const Unit& unit) {
  std::optional<Minute> finish;
  for (const Operation* operation : open.operations_of(unit.id)) {
    if (std::count(unit.after_due.begin(), unit.after_due.end(), operation->id) > 0) continue;
    if (const Placement* at = open.placement(operation->id))
      finish = std::max(finish.value_or(at->end), at->end);
  }
  return finish;
}

void judge_late(const Case& open, Violations& found) {
  std::unordered_map<std::string_view, std::vector<const Late*>> told;
  for (const Late& late : open.answer.late) told[late.unit].push_back(&late);
  for (const Unit& unit : open.problem.units) {
    const auto finish = open.is_there(unit.id) ? finish_of(open, unit) : std::nullopt;
    const bool late = finish && unit.due && *finish > *unit.due;
    const auto& lines = told[unit.id];
    std::string what;
    if (late && lines.empty()) {
      what = format("ends in minute {}, due in {}, and is not told to be late", *finish, *unit.due);
    } else if (!late && !lines.empty()) {
      what = "is told to be late, but is not";
    } else if (lines.size() > 1) {
      what = "is told to be late more than once";
    } else if (late && (lines.front()->due != *unit.due || lines.front()->finish != *finish)) {
      what = format("ends in minute {}, due in {}, but is told to end in {}, due in {}", *finish, *unit.due,
                    lines.front()->finish, lines.front()->due);
    } else {
      continue;
    }
    found.push_back({"late", {unit.id}, format("Unit \"{}\" {}.", unit.id, what)});
  }
}

}  // namespace

void judge_told(const Case& open, Violations& found) {
  judge_late(open, found);
  std::optional<Minute> last;
  for (const Work& work : open.works()) last = std::max(last.value_or(work.at->end), work.at->end);
  if (open.answer.finish != last.value_or(0)) {
    found.push_back({"finish",
                     {},
                     format("The last operation ends in minute {}, but the answer says {}.", last.value_or(0),
                            open.answer.finish)});
  }
}

}  // namespace dampward::referee
