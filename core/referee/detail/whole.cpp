#include <algorithm>
#include <unordered_map>

#include "core/referee/detail/rules.h"

namespace dampward::referee {
namespace {

bool has_member_there(const Case& open, const Load& load) {
  return std::any_of(load.members.begin(), load.members.end(), [&](const Member& member) {
    const Operation* loading = open.operation(member.loading);
    return loading && loading->unit && open.is_there(*loading->unit);
  });
}

void judge_units(const Case& open, Violations& found) {
  for (const Unit& unit : open.problem.units) {
    if (open.is_there(unit.id)) continue;
    for (const Operation* operation : open.operations_of(unit.id)) {
      if (!open.placement(operation->id) || open.fixed(operation->id)) continue;
      found.push_back({"whole",
                       {unit.id, operation->id},
                       format("\"{}\" has a place, but other operations of its unit \"{}\" have none.",
                              operation->id, unit.id)});
    }
  }
}

void judge_bakes(const Case& open, Violations& found) {
  for (const Load& load : open.problem.loads) {
    const bool wanted = has_member_there(open, load);
    const bool there = open.placement(load.bake) != nullptr;
    if (there && !wanted && !open.fixed(load.bake)) {
      found.push_back({"whole",
                       {load.id, load.bake},
                       format("Load \"{}\" is baked, but none of its units is in the answer.", load.id)});
    } else if (wanted && !there) {
      found.push_back({"whole",
                       {load.id, load.bake},
                       format("A unit of load \"{}\" is in the answer, but its bake \"{}\" is not.", load.id,
                              load.bake)});
    }
  }
}

void say_told(const char* sort, const std::string& id, bool there, int told, Violations& found) {
  if (told == (there ? 0 : 1)) return;
  const char* what = there       ? "is in the answer and among what is unplaced"
                     : told == 0 ? "is neither in the answer nor among what is unplaced"
                                 : "is told more than once among what is unplaced";
  found.push_back({"untold", {id}, format("{} \"{}\" {}.", sort, id, what)});
}

}  // namespace

void judge_whole(const Case& open, Violations& found) {
  judge_units(open, found);
  judge_bakes(open, found);

  std::unordered_map<std::string_view, int> units, operations;
  for (const Unplaced& unplaced : open.answer.unplaced)
    ++(unplaced.unit ? units[*unplaced.unit] : operations[unplaced.operation]);
  for (const Unit& unit : open.problem.units)
    say_told("Unit", unit.id, open.is_there(unit.id), units[unit.id], found);
  for (const Operation& operation : open.problem.operations) {
    const bool told_by_itself = !operation.unit && !open.is_bake(operation.id);
    if (told_by_itself) {
      say_told("Operation", operation.id, open.placement(operation.id) != nullptr, operations[operation.id],
               found);
    } else if (operations[operation.id] > 0) {
      found.push_back(
          {"untold",
           {operation.id},
           format("\"{}\" is among what is unplaced without a unit, but it {}.", operation.id,
                  operation.unit ? "belongs to one" : "is a bake, which is told with its units")});
    }
  }
}

}  // namespace dampward::referee
