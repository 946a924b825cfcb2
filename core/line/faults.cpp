#include <algorithm>
#include <map>
#include <set>
#include <string>
#include <vector>

#include "core/base/format.h"
#include "core/base/text.h"
#include "core/line/planner.h"

namespace dampward::line {
namespace {

// No shop plans ten years ahead; far below where minutes could overflow.
constexpr Minute longest_horizon = 10 * 366 * 24 * 60;

class Finder {
 public:
  explicit Finder(const Problem& problem) : problem_(problem) {}

  Problems all() {
    if (problem_.horizon < 1 || problem_.horizon > longest_horizon) {
      add(format("a horizon of {} minutes", problem_.horizon), format("1 to {} minutes", longest_horizon));
    }
    names();
    for (const Operation& op : problem_.operations) operation(op);
    for (const Gap& gap : problem_.gaps) this->gap(gap);
    for (const Load& load : problem_.loads) this->load(load);
    people();
    for (const Unit& unit : problem_.units) {
      for (const std::string& id : unit.after_due) known("operation", id, operations_, "unit " + unit.id);
      if (unit.weight < 0)
        add(format("unit {} with a weight of {}", unit.id, unit.weight), "a weight of 0 or more");
    }
    return std::move(faults_);
  }

 private:
  using Names = std::set<std::string>;

  void add(std::string found, std::string expected) {
    faults_.push_back({{"timetable problem"}, std::move(found), std::move(expected), ""});
  }

  template <class Items>
  Names gather(const char* what, const Items& items) {
    Names names;
    for (const auto& item : items) {
      if (item.id.empty()) add(format("{} {} without an id", an(what), what), "an id for each");
      if (!names.insert(item.id).second)
        add(format("two of kind {} with the id {}", what, item.id), "each id once");
    }
    return names;
  }

  static const char* an(std::string_view word) { return word == "operation" || word == "oven" ? "an" : "a"; }

  void names() {
    units_ = gather("unit", problem_.units);
    operations_ = gather("operation", problem_.operations);
    gather("load", problem_.loads);
    gather("person", problem_.people);
    stations_ = gather("station", problem_.stations);
    ovens_ = gather("oven", problem_.ovens);
    capacities_ = gather("capacity", problem_.capacities);
  }

  void known(const char* what, const std::string& id, const Names& names, const std::string& where) {
    if (names.contains(id)) return;
    const std::vector<std::string> list(names.begin(), names.end());
    const std::string guess = did_you_mean(id, list);
    add(format("{} names the {} \"{}\", which is not there", where, what, id),
        guess.empty() ? format("the id of a listed {}", what) : guess);
  }

  void operation(const Operation& op) {
    const std::string where = "operation " + op.id;
    if (!op.unit.empty()) known("unit", op.unit, units_, where);
    if (op.length < 1 || op.length > longest_horizon) {
      add(format("{} lasts {} minutes", where, op.length), "at least 1 minute, and less than ten years");
    }
    if (op.people < 1) add(format("{} asks for {} people", where, op.people), "at least 1");
    if (op.skill.empty() && op.attendance != Attendance::unattended) {
      add(format("{} is attended or watched but names no skill", where), "the skill it needs");
    }
    for (const std::string& id : op.stations) known("station", id, stations_, where);
    for (const Demand& demand : op.demands) {
      known("capacity", demand.capacity, capacities_, where);
      if (demand.amount < 0 || demand.tail < 0) {
        add(format("{} takes {} of {} with a tail of {} minutes", where, demand.amount, demand.capacity,
                   demand.tail),
            "amounts and tails of 0 or more");
      }
    }
  }

  void gap(const Gap& gap) {
    const std::string where = format("gap \"{}\" from {} to {}", gap.name, gap.from, gap.to);
    known("operation", gap.from, operations_, where);
    known("operation", gap.to, operations_, where);
    if (gap.shortest < 0) add(format("{} is at least {} minutes", where, gap.shortest), "0 or more");
    if (gap.longest && *gap.longest < gap.shortest) {
      add(format("{} is at least {} and at most {} minutes", where, gap.shortest, *gap.longest),
          "a longest gap no shorter than the shortest");
    }
  }

  void load(const Load& load) {
    const std::string where = "load " + load.id;
    if (load.ovens.empty()) add(where + " names no oven", "at least one oven it may go into");
    if (load.loadings.empty() || load.unloadings.empty()) {
      add(where + " has no loading or no unloading", "one of each for every unit");
    }
    for (const std::string& id : load.ovens) known("oven", id, ovens_, where);
    std::vector<std::string> all = load.loadings;
    all.insert(all.end(), load.unloadings.begin(), load.unloadings.end());
    for (const std::string& id : all) role(id, Attendance::attended, "attended", where);
    role(load.bake, Attendance::watched, "watched", where);
  }

  void role(const std::string& id, Attendance attendance, const char* word, const std::string& where) {
    known("operation", id, operations_, where);
    if (!in_loads_.insert(id).second) add(format("operation {} has two places in loads", id), "one");
    const auto op = std::find_if(problem_.operations.begin(), problem_.operations.end(),
                                 [&](const Operation& o) { return o.id == id; });
    if (op != problem_.operations.end() && op->attendance != attendance) {
      add(format("{} uses operation {}, which is not {}", where, id, word), format("{} work there", word));
    }
  }

  void calendar(const Calendar& spans, const std::string& where) {
    for (std::size_t i = 0; i < spans.size(); ++i) {
      if (spans[i].from >= spans[i].to || (i > 0 && spans[i].from <= spans[i - 1].to)) {
        add(format("{} has the hours {} to {} out of order", where, spans[i].from, spans[i].to),
            "spans in order, apart, each ending after it begins");
        return;
      }
    }
  }

  void people() {
    for (const Person& person : problem_.people) {
      calendar(person.shifts, "person " + person.id);
      calendar(person.breaks, "person " + person.id);
    }
    for (const Oven& oven : problem_.ovens) calendar(oven.powered, "oven " + oven.id);
    for (const Station& station : problem_.stations) {
      if (station.places < 1)
        add(format("station {} with {} places", station.id, station.places), "at least 1");
    }
    for (const Capacity& capacity : problem_.capacities) {
      for (std::size_t i = 1; i < capacity.steps.size(); ++i) {
        if (capacity.steps[i].from <= capacity.steps[i - 1].from) {
          add(format("capacity {} with steps out of order", capacity.id), "steps in the order of time");
          break;
        }
      }
    }
  }

  const Problem& problem_;
  Problems faults_;
  Names units_, operations_, stations_, ovens_, capacities_, in_loads_;
};

}  // namespace

Problems faults(const Problem& problem) {
  return Finder(problem).all();
}

}  // namespace dampward::line
