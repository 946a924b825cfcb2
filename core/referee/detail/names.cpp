#include <unordered_set>

#include "core/referee/detail/rules.h"

namespace dampward::referee {
namespace {

struct Names {
  const Case& open;
  Violations& found;

  void unknown(const char* sort, const std::string& id, const std::string& where) {
    found.push_back({"unknown",
                     {id},
                     format("{} names the {} \"{}\", which the problem does not have.", where, sort, id)});
  }

  // A station, or an oven where the operation goes into one.
  void place(const Placement& placement) {
    if (!placement.station || open.station(*placement.station)) return;
    if (open.load_of(placement.operation) && open.oven(*placement.station)) return;
    unknown("station", *placement.station, format("The placement of \"{}\"", placement.operation));
  }

  void placements() {
    std::unordered_set<std::string_view> seen;
    for (const Placement& placement : open.answer.placements) {
      if (!open.operation(placement.operation)) {
        unknown("operation", placement.operation, "A placement");
        continue;
      }
      if (!seen.insert(placement.operation).second)
        found.push_back({"twice",
                         {placement.operation},
                         format("\"{}\" is placed more than once.", placement.operation)});
      for (const std::string& person : placement.people) {
        if (!open.person(person))
          unknown("person", person, format("The placement of \"{}\"", placement.operation));
      }
      place(placement);
    }
  }

  void stays() {
    std::unordered_set<std::string_view> seen;
    for (const OvenStay& stay : open.answer.oven_stays) {
      if (!open.load(stay.load)) {
        unknown("load", stay.load, "An oven stay");
        continue;
      }
      if (!seen.insert(stay.load).second)
        found.push_back(
            {"twice", {stay.load}, format("Load \"{}\" has more than one oven stay.", stay.load)});
      if (!open.oven(stay.oven)) unknown("oven", stay.oven, format("The stay of load \"{}\"", stay.load));
    }
  }

  void lists() {
    for (const Late& late : open.answer.late) {
      if (!open.unit(late.unit)) unknown("unit", late.unit, "The list of late units");
    }
    for (const Unplaced& unplaced : open.answer.unplaced) {
      if (unplaced.unit && !open.unit(*unplaced.unit))
        unknown("unit", *unplaced.unit, "The list of what is unplaced");
      if (!open.operation(unplaced.operation))
        unknown("operation", unplaced.operation, "The list of what is unplaced");
    }
  }
};

}  // namespace

void judge_names(const Case& open, Violations& found) {
  Names names{open, found};
  names.placements();
  names.stays();
  names.lists();
}

}  // namespace dampward::referee
