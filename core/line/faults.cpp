#include <map>
#include <set>
#include <string>
#include <vector>

#include "core/base/format.h"
#include "core/base/text.h"
#include "core/line/detail/bounds.h"
#include "core/line/detail/impossible.h"
#include "core/line/planner.h"

namespace dampward::line {
namespace {

using namespace detail;

class Finder {
 public:
  explicit Finder(const Problem& problem) : problem_(problem) {}

  Problems all() {
    range("the problem", "a horizon", problem_.horizon, 1, longest_time);
    range("the problem", "its present minute", problem_.now, -longest_time, longest_time);
    sizes();
    names();
    for (const Operation& op : problem_.operations) operation(op);
    for (const Gap& gap : problem_.gaps) this->gap(gap);
    for (const Load& load : problem_.loads) this->load(load);
    for (const Person& person : problem_.people) {
      calendar(person.shifts, "person " + person.id);
      calendar(person.breaks, "person " + person.id);
    }
    for (const Station& station : problem_.stations)
      range("station " + station.id, "places", station.places, 1, most_resources);
    for (const Oven& oven : problem_.ovens) this->oven(oven);
    for (const Capacity& capacity : problem_.capacities) this->capacity(capacity);
    for (const Unit& unit : problem_.units) this->unit(unit);
    for (const Fixed& fixed : problem_.fixed) this->fixed(fixed);
    // What no timetable can mend is looked for only where every name means something.
    if (faults_.empty()) faults_ = impossible(problem_);
    return std::move(faults_);
  }

 private:
  using Names = std::set<std::string>;

  void add(std::string found, std::string expected) {
    faults_.push_back({{"timetable problem"}, std::move(found), std::move(expected), ""});
  }

  void range(const std::string& where, const char* what, std::int64_t value, std::int64_t least,
             std::int64_t most) {
    if (value >= least && value <= most) return;
    add(format("{} with {} of {}", where, what, value), format("{} to {}", least, most));
  }

  void amount(const std::string& where, const char* what, double value, double most) {
    if (value >= 0 && value <= most) return;  // a number that is none fails too
    add(format("{} with {} of {}", where, what, value), format("0 to {}", most));
  }

  void degrees(const std::string& where, const char* what, const std::optional<Temperature>& value) {
    if (!value || (*value >= coldest_setting && *value <= hottest_setting)) return;
    add(format("{} with {} of {} °C", where, what, value->celsius()),
        format("{} to {} °C", coldest_setting.celsius(), hottest_setting.celsius()));
  }

  void few(const char* what, std::size_t count, std::size_t most) {
    if (count > most) add(format("{} {}", count, what), format("at most {}", most));
  }

  void sizes() {
    few("units", problem_.units.size(), most_things);
    few("operations", problem_.operations.size(), most_things);
    few("gaps", problem_.gaps.size(), most_things);
    few("loads", problem_.loads.size(), most_things);
    few("people", problem_.people.size(), most_resources);
    few("stations", problem_.stations.size(), most_resources);
    few("ovens", problem_.ovens.size(), most_resources);
    few("capacities", problem_.capacities.size(), most_resources);
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
    for (const Operation& op : problem_.operations) by_id_.emplace(op.id, &op);
    operations_ = gather("operation", problem_.operations);
    gather("load", problem_.loads);
    people_ = gather("person", problem_.people);
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
    if (op.length < 1 || op.length > longest_time) {
      add(format("{} lasts {} minutes", where, op.length), "at least 1 minute, and less than ten years");
    }
    if (op.people < 1 || op.people > static_cast<int>(most_resources))
      add(format("{} asks for {} people", where, op.people), format("1 to {}", most_resources));
    if (op.skill.empty() && op.attendance != Attendance::unattended) {
      add(format("{} is attended or watched but names no skill", where), "the skill it needs");
    }
    range(where, "a time to clear", op.clears, 0, longest_time);
    for (const std::string& id : op.stations) known("station", id, stations_, where);
    for (const Demand& demand : op.demands) {
      known("capacity", demand.capacity, capacities_, where);
      if (demand.amount < 0 || demand.amount > most_amount || demand.tail < 0 || demand.tail > longest_time) {
        add(format("{} takes {} of {} with a tail of {} minutes", where, demand.amount, demand.capacity,
                   demand.tail),
            "amounts from 0 to 1,000,000,000,000 and tails of 0 or more");
      }
    }
  }

  void gap(const Gap& gap) {
    const std::string where = format("gap \"{}\" from {} to {}", gap.name, gap.from, gap.to);
    known("operation", gap.from, operations_, where);
    known("operation", gap.to, operations_, where);
    if (gap.shortest < 0 || gap.shortest > longest_time)
      add(format("{} is at least {} minutes", where, gap.shortest), "0 or more");
    if (gap.longest && (*gap.longest < gap.shortest || *gap.longest > longest_time)) {
      add(format("{} is at least {} and at most {} minutes", where, gap.shortest, *gap.longest),
          "a longest gap no shorter than the shortest");
    }
  }

  void load(const Load& load) {
    const std::string where = "load " + load.id;
    if (load.ovens.empty()) add(where + " names no oven", "at least one oven it may go into");
    if (load.members.empty()) add(where + " has no members", "the loading and unloading of every unit");
    for (const std::string& id : load.ovens) known("oven", id, ovens_, where);
    degrees(where, "a setting", load.setting);
    for (const Member& member : load.members) this->member(member, load, where);
    role(load.bake, Attendance::watched, "watched", where);
    if (const Operation* bake = find(load.bake); bake && !bake->unit.empty())
      add(format("{} bakes in operation {}, which is of unit {}", where, bake->id, bake->unit),
          "a bake of no unit: all its members share it");
  }

  void member(const Member& member, const Load& load, const std::string& where) {
    role(member.loading, Attendance::attended, "attended", where);
    role(member.unloading, Attendance::attended, "attended", where);
    const Operation *in = find(member.loading), *out = find(member.unloading);
    if (in && out && (in->unit.empty() || in->unit != out->unit))
      add(format("{} puts in with {} and takes out with {}, not of one unit", where, in->id, out->id),
          "a loading and an unloading of the same unit");
    range(where, "a member's needed time", member.needs, 0, longest_time);
    amount(where, "a volume in litres", member.volume.in(litre), most_size);
    amount(where, "a mass in kilograms", member.mass.in(kilogram), most_size);
    degrees(where, "a coldest setting", member.coldest);
    degrees(where, "a hottest setting", member.hottest);
    if ((member.coldest || member.hottest) && !load.setting)
      add(where + " has a member that limits a setting the load does not state", "a setting of the load");
  }

  const Operation* find(const std::string& id) const {
    const auto op = by_id_.find(id);
    return op == by_id_.end() ? nullptr : op->second;
  }

  void role(const std::string& id, Attendance attendance, const char* word, const std::string& where) {
    known("operation", id, operations_, where);
    if (!in_loads_.insert(id).second) add(format("operation {} has two places in loads", id), "one");
    const Operation* op = find(id);
    if (op && op->attendance != attendance)
      add(format("{} uses operation {}, which is not {}", where, id, word), format("{} work there", word));
  }

  void calendar(const Calendar& spans, const std::string& where) {
    for (std::size_t i = 0; i < spans.size(); ++i) {
      const bool far = spans[i].from < -longest_time || spans[i].to > longest_time;
      if (far || spans[i].from >= spans[i].to || (i > 0 && spans[i].from <= spans[i - 1].to)) {
        add(format("{} has the hours {} to {} out of order", where, spans[i].from, spans[i].to),
            "spans in order, apart, each ending after it begins, within ten years");
        return;
      }
    }
  }

  void oven(const Oven& oven) {
    const std::string where = "oven " + oven.id;
    calendar(oven.powered, where);
    range(where, "a time to cool", oven.cools, 0, longest_time);
    if (oven.volume) amount(where, "a volume in litres", oven.volume->in(litre), most_size);
    if (oven.mass) amount(where, "a mass in kilograms", oven.mass->in(kilogram), most_size);
  }

  void capacity(const Capacity& capacity) {
    const std::string where = "capacity " + capacity.id;
    for (std::size_t i = 0; i < capacity.steps.size(); ++i) {
      range(where, "a step from minute", capacity.steps[i].from, -longest_time, longest_time);
      range(where, "an amount", capacity.steps[i].amount, 0, most_amount);
      if (i > 0 && capacity.steps[i].from <= capacity.steps[i - 1].from) {
        add(where + " with steps out of order", "steps in the order of time");
        return;
      }
    }
  }

  void unit(const Unit& unit) {
    const std::string where = "unit " + unit.id;
    for (const std::string& id : unit.after_due) {
      known("operation", id, operations_, where);
      if (const Operation* op = find(id); op && op->unit != unit.id)
        add(format("{} counts {} as after its due minute, which is not its own", where, id),
            "operations of the unit");
    }
    range(where, "a weight", unit.weight, 0, most_weight);
    range(where, "a priority", unit.priority, -most_weight, most_weight);
    if (unit.due) range(where, "a due minute", *unit.due, -longest_time, longest_time);
  }

  void fixed(const Fixed& fixed) {
    const std::string where = "fixed operation " + fixed.operation;
    known("operation", fixed.operation, operations_, "what is fixed");
    if (!fixed_.insert(fixed.operation).second) add(where + " is fixed twice", "each operation at most once");
    if (fixed.start < -longest_time || fixed.end < fixed.start || fixed.end > problem_.horizon)
      add(format("{} from {} to {}", where, fixed.start, fixed.end),
          "an end after its start, by the horizon");
    for (const std::string& id : fixed.people) known("person", id, people_, where);
    if (!fixed.station.empty() && !stations_.contains(fixed.station) && !ovens_.contains(fixed.station))
      add(format("{} at \"{}\", which is not there", where, fixed.station), "the id of a station or an oven");
  }

  const Problem& problem_;
  Problems faults_;
  std::map<std::string, const Operation*> by_id_;
  Names units_, operations_, people_, stations_, ovens_, capacities_, in_loads_, fixed_;
};

}  // namespace

Problems faults(const Problem& problem) {
  return Finder(problem).all();
}

}  // namespace dampward::line
