#include "checker.h"

#include <algorithm>
#include <map>
#include <set>

namespace dampward::line::test {
namespace {

bool inside(const Calendar& spans, Minute minute) {
  return std::any_of(spans.begin(), spans.end(),
                     [&](const Span& span) { return span.from <= minute && minute < span.to; });
}

bool has(const std::vector<std::string>& list, const std::string& word) {
  return std::find(list.begin(), list.end(), word) != list.end();
}

template <class Item>
const Item* named(const std::vector<Item>& items, const std::string& id) {
  const auto it = std::find_if(items.begin(), items.end(), [&](const Item& item) { return item.id == id; });
  return it == items.end() ? nullptr : &*it;
}

class Checker {
 public:
  Checker(const Problem& problem, const Answer& answer) : problem_(problem), answer_(answer) {
    for (const Placement& placement : answer.placements) at_[placement.operation] = &placement;
    for (const Fixed& fixed : problem.fixed) fixed_[fixed.operation] = &fixed;
  }

  std::vector<std::string> all() {
    whole();
    for (const Placement& placement : answer_.placements) one(placement);
    hands();
    stations();
    gaps();
    ovens();
    solvent();
    capacities();
    late();
    return broken_;
  }

 private:
  void say(const std::string& rule, const std::string& what) { broken_.push_back(rule + ": " + what); }

  bool in_plan(const std::string& id) const { return at_.contains(id); }

  void solvent() {
    for (const Load& load : problem_.loads) {
      if (!heat_.contains(load.bake)) continue;
      const Oven* oven = named(problem_.ovens, oven_of(load)->oven);
      const Span hot{heat_[load.bake].from, heat_[load.bake].to + oven->cools};
      for (const Placement& p : answer_.placements) {
        const Operation* op = named(problem_.operations, p.operation);
        if (oven->near_solvent && op->solvent && p.start < hot.to && hot.from < p.end + op->clears)
          say("solvent", p.operation + " beside the hot " + oven->id);
      }
    }
  }

  const OvenStay* oven_of(const Load& load) const {
    const auto stay = std::find_if(answer_.stays.begin(), answer_.stays.end(),
                                   [&](const OvenStay& s) { return s.load == load.id; });
    return stay == answer_.stays.end() ? nullptr : &*stay;
  }

  // All of a unit or nothing, and every unit that is not there has a reason.
  void whole() {
    if (at_.size() != answer_.placements.size()) say("whole", "an operation is placed twice");
    for (const Unit& unit : problem_.units) {
      std::size_t placed = 0, all = 0;
      for (const Operation& op : problem_.operations) {
        if (op.unit != unit.id) continue;
        ++all;
        placed += in_plan(op.id);
      }
      const bool told = std::any_of(answer_.unplaced.begin(), answer_.unplaced.end(),
                                    [&](const Unplaced& u) { return u.unit == unit.id; });
      if (placed != 0 && placed != all) say("whole", unit.id + " is begun and not ended");
      if (told == (placed == all)) say("whole", unit.id + " is both in the plan and out of it, or neither");
    }
  }

  void one(const Placement& p) {
    const Operation* op = named(problem_.operations, p.operation);
    if (!op) return say("whole", p.operation + " is not in the problem");
    const Fixed* fixed = fixed_.contains(p.operation) ? fixed_[p.operation] : nullptr;
    if (!fixed && (p.start < 0 || p.end > problem_.horizon)) say("span", p.operation + " leaves the horizon");
    if (!fixed && p.start < problem_.now) say("past", p.operation + " begins before the present minute");
    if (fixed && (p.start != fixed->start || p.end != fixed->end || p.people != fixed->people ||
                  p.station != fixed->station))
      say("fixed", p.operation + " is moved");
    if (op->attendance != Attendance::attended) {
      if (!p.people.empty()) say("hands", p.operation + " needs no hands");
      if (p.end - p.start != op->length) say("span", p.operation + " has the wrong length");
      if (op->attendance == Attendance::watched) watched(*op, p.start, p.end);
      return;
    }
    std::set<std::string> distinct(p.people.begin(), p.people.end());
    if (op->skill.empty() ? !p.people.empty() : distinct.size() != static_cast<std::size_t>(op->people)) {
      say("hands", p.operation + " has the wrong number of people");
    }
    Minute worked = 0;
    for (Minute m = p.start; m < p.end; ++m) {
      bool anyone_on_break = false;
      for (const std::string& id : p.people) {
        const Person* person = named(problem_.people, id);
        if (!person || !has(person->skills, op->skill)) return say("skill", id + " cannot do " + p.operation);
        if (!inside(person->shifts, m)) return say("shift", id + " is off shift during " + p.operation);
        anyone_on_break = anyone_on_break || inside(person->breaks, m);
      }
      const bool edge = m == p.start || m + 1 == p.end;
      if (anyone_on_break && (!op->pausable || edge))
        return say("break", p.operation + " runs through a break");
      worked += !anyone_on_break;
    }
    if (worked != op->length) say("span", p.operation + " has the wrong length");
  }

  void watched(const Operation& op, Minute from, Minute to) {
    for (Minute m = from; m < to; ++m) {
      const bool somebody = std::any_of(
          problem_.people.begin(), problem_.people.end(),
          [&](const Person& person) { return has(person.skills, op.skill) && inside(person.shifts, m); });
      if (!somebody) return say("watch", op.id + " runs with nobody within call");
    }
  }

  void hands() {
    for (const Placement& a : answer_.placements) {
      for (const Placement& b : answer_.placements) {
        if (&a >= &b || a.end <= b.start || b.end <= a.start) continue;
        for (const std::string& id : a.people) {
          if (has(b.people, id)) say("hands", id + " is at " + a.operation + " and " + b.operation);
        }
      }
    }
  }

  void stations() {
    std::map<std::pair<std::string, Minute>, int> used;
    for (const Placement& p : answer_.placements) {
      const Operation* op = named(problem_.operations, p.operation);
      if (!op || (op->stations.empty() && op->station_skill.empty())) continue;
      const Station* station = named(problem_.stations, p.station);
      const bool right = station && (op->stations.empty() ? has(station->serves, op->station_skill)
                                                          : has(op->stations, p.station));
      if (!right) {
        say("station", p.operation + " stands at the wrong place");
        continue;
      }
      for (Minute m = p.start; m < p.end; ++m) {
        if (++used[{p.station, m}] == station->places + 1) say("station", p.station + " is over-full");
      }
    }
  }

  void gaps() {
    for (const Gap& gap : problem_.gaps) {
      if (!in_plan(gap.from) || !in_plan(gap.to)) continue;
      const Minute wait = at_[gap.to]->start - at_[gap.from]->end;
      if (wait < gap.shortest || (gap.longest && wait > *gap.longest)) say("gap", gap.name);
    }
  }

  void ovens() {
    std::map<std::pair<std::string, Minute>, int> used;
    for (const Load& load : problem_.loads) {
      const OvenStay* stay = oven_of(load);
      if (!in_plan(load.bake)) continue;
      if (!stay || !has(load.ovens, stay->oven)) {
        say("oven", load.id + " has no oven of its own");
        continue;
      }
      const Placement& bake = *at_[load.bake];
      Minute first = bake.start, last = bake.end;
      for (const Member& member : load.members) {
        const std::string& id = member.loading;
        if (!in_plan(id)) continue;
        first = std::min(first, at_[id]->start);
        if (at_[id]->end > bake.start) say("oven", id + " ends after the bake begins");
      }
      for (const Member& member : load.members) {
        const std::string& id = member.unloading;
        if (!in_plan(id)) continue;
        last = std::max(last, at_[id]->end);
        if (at_[id]->start < bake.end) say("oven", id + " begins before the bake ends");
      }
      if (!(stay->occupied == Span{first, last})) say("oven", load.id + " states the wrong stay");
      for (Minute m = first; m < last; ++m) {
        if (++used[{stay->oven, m}] == 2) say("oven", stay->oven + " holds two loads");
      }
      const Oven* oven = named(problem_.ovens, stay->oven);
      Volume volume{};
      for (const Member& member : load.members) volume += member.volume;
      if (oven->volume && volume > *oven->volume) say("oven", load.id + " is too large for " + oven->id);
      for (Minute m = bake.start; m < last; ++m) {
        if (!inside(oven->powered, m)) {
          say("power", stay->oven + " is hot without power");
          break;
        }
      }
      watched(*named(problem_.operations, load.bake), bake.start, last);
      heat_[load.bake] = {bake.start, last};
    }
  }

  void capacities() {
    for (const Capacity& capacity : problem_.capacities) {
      std::map<Minute, std::int64_t> used;
      for (const Placement& p : answer_.placements) {
        const Operation* op = named(problem_.operations, p.operation);
        const Span span = heat_.contains(p.operation) ? heat_[p.operation] : Span{p.start, p.end};
        for (const Demand& demand : op->demands) {
          if (demand.capacity != capacity.id) continue;
          for (Minute m = span.from; m < span.to + demand.tail; ++m) used[m] += demand.amount;
        }
      }
      for (const auto& [minute, amount] : used) {
        std::int64_t there = 0;
        for (const Capacity::Step& step : capacity.steps) {
          if (step.from <= minute) there = step.amount;
        }
        if (amount > there) {
          say("capacity", capacity.id + " is exceeded");
          break;
        }
      }
    }
  }

  void late() {
    for (const Unit& unit : problem_.units) {
      Minute finish = 0;
      for (const Operation& op : problem_.operations) {
        if (op.unit == unit.id && in_plan(op.id) && !has(unit.after_due, op.id)) {
          finish = std::max(finish, at_[op.id]->end);
        }
      }
      const bool told = std::any_of(answer_.late.begin(), answer_.late.end(), [&](const Lateness& l) {
        return l.unit == unit.id && l.finish == finish && l.due == unit.due;
      });
      if (told != (unit.due && finish > *unit.due))
        say("late", unit.id + " is late and not said so, or the reverse");
    }
  }

  const Problem& problem_;
  const Answer& answer_;
  std::map<std::string, const Placement*> at_;
  std::map<std::string, const Fixed*> fixed_;
  std::map<std::string, Span> heat_;
  std::vector<std::string> broken_;
};

}  // namespace

std::vector<std::string> violations(const Problem& problem, const Answer& answer) {
  return Checker(problem, answer).all();
}

}  // namespace dampward::line::test
