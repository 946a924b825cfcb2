#include <algorithm>
#include <deque>
#include <map>
#include <set>

#include "core/line/calendar.h"
#include "core/line/detail/level.h"
#include "core/line/detail/model.h"
#include "core/line/objective.h"

namespace dampward::line {
namespace {

using detail::Arc, detail::Level, detail::Model, detail::Op, detail::Role;

std::size_t at(int i) {
  return static_cast<std::size_t>(i);
}

// The earliest any operation can end: longest paths along the shortest gaps, each start on a shift of somebody who can.
class EarliestEnds {
 public:
  EarliestEnds(const Model& model, const std::vector<char>& asked) : model_(model) {
    for (const Person* person : model.people) {
      shifts_.emplace_back(person->shifts);
      working_.emplace_back(without(person->shifts, person->breaks));
    }
    for (std::size_t i = 0; i < model.ops.size(); ++i)
      starts_.push_back(own_start(static_cast<int>(i), model.problem.now));
    std::deque<int> open;
    for (std::size_t i = 0; i < starts_.size(); ++i) open.push_back(static_cast<int>(i));
    while (!open.empty()) {
      const int op = open.front();
      open.pop_front();
      if (!asked[at(op)]) continue;
      for (const Arc& arc : model.ops[at(op)].after) {
        const Minute from = end(op) + arc.shortest;
        if (model.ops[at(arc.to)].fixed || from <= starts_[at(arc.to)]) continue;
        starts_[at(arc.to)] = own_start(arc.to, from);
        open.push_back(arc.to);
      }
    }
  }

  Minute end(int op) const { return starts_[at(op)] + model_.ops[at(op)].length; }

 private:
  // At or after that minute, where somebody with the skill has the time.
  Minute own_start(int number, Minute from) const {
    const Op& op = model_.ops[at(number)];
    if (op.fixed) return op.fixed->start;
    if (op.as_given->attendance != Attendance::attended) return from;
    Minute first = model_.problem.horizon;
    for (const int person : op.skilled) {
      const Level& free = op.as_given->pausable ? shifts_[at(person)] : working_[at(person)];
      if (const auto fits = free.fit(from, op.length, 1)) first = std::min(first, *fits);
    }
    return std::max(from, first);
  }

  const Model& model_;
  std::vector<Level> shifts_, working_;
  std::vector<Minute> starts_;
};

// The earliest minute by which these people have worked that long together.
Minute worked_by(const std::vector<const Person*>& people, Minute work, Minute from, Minute horizon) {
  std::map<Minute, int> changes;  // of how many are at work
  for (const Person* person : people) {
    for (const Span& span : without(person->shifts, person->breaks)) {
      if (span.to <= from) continue;
      ++changes[std::max(span.from, from)];
      --changes[span.to];
    }
  }
  Minute last = from;
  int there = 0;
  for (const auto& [minute, change] : changes) {
    const Minute done = there * (minute - last);
    if (done >= work) return last + (work + there - 1) / there;
    work -= done;
    last = minute;
    there += change;
  }
  return work > 0 ? horizon : last;
}

// Every skill's work against those who have it; and all work against all.
Minute hands_bound(const Model& model, const std::vector<char>& asked) {
  std::map<std::set<std::string>, Minute> work;
  std::set<std::string> all;
  for (std::size_t i = 0; i < model.ops.size(); ++i) {
    const Op& op = model.ops[i];
    if (!asked[i] || op.fixed || op.as_given->attendance != Attendance::attended) continue;
    const Minute minutes = op.length * op.as_given->people;
    work[{op.as_given->skill}] += minutes;
    all.insert(op.as_given->skill);
  }
  Minute total = 0;
  for (const auto& [skill, minutes] : work) total += minutes;
  work[all] = total;
  Minute bound = model.problem.now;
  for (const auto& [skills, minutes] : work) {
    std::vector<const Person*> people;
    for (const Person* person : model.people) {
      const auto can = [&](const std::string& skill) { return skills.contains(skill); };
      if (std::any_of(person->skills.begin(), person->skills.end(), can)) people.push_back(person);
    }
    if (minutes > 0)
      bound = std::max(bound, worked_by(people, minutes, model.problem.now, model.problem.horizon));
  }
  return bound;
}

// A load holds its oven for its longest loading, its bake and its longest unloading at least.
Minute ovens_bound(const Model& model, const std::vector<char>& asked) {
  Minute sum = 0;
  for (const detail::LoadOps& load : model.loads) {
    const auto longest = [&](const std::vector<int>& ops) {
      Minute most = 0;
      for (const int op : ops) most = std::max(most, asked[at(op)] ? model.ops[at(op)].length : 0);
      return most;
    };
    if (asked[at(load.bake)])
      sum += longest(load.loadings) + model.ops[at(load.bake)].length + longest(load.unloadings);
  }
  return sum;
}

// By operation: whether its unit is asked; a bake with the first of its members.
std::vector<char> asked_of(const Model& model, const std::vector<std::string>& left_out) {
  std::vector<char> asked;
  for (const Op& op : model.ops)
    asked.push_back(std::find(left_out.begin(), left_out.end(), op.as_given->unit) == left_out.end() ? 1 : 0);
  for (const detail::LoadOps& load : model.loads)
    asked[at(load.bake)] =
        std::any_of(load.loadings.begin(), load.loadings.end(), [&](int op) { return asked[at(op)] != 0; });
  return asked;
}

}  // namespace

Objective at_best(const Problem& problem, const std::vector<std::string>& left_out) {
  const Model model(problem);
  const std::vector<char> asked = asked_of(model, left_out);
  const EarliestEnds ends(model, asked);
  Objective best;
  best.finish = model.ops.empty() ? 0 : hands_bound(model, asked);
  for (std::size_t op = 0; op < model.ops.size(); ++op) {
    if (asked[op]) best.finish = std::max(best.finish, ends.end(static_cast<int>(op)));
  }
  for (std::size_t u = 0; u < model.units.size(); ++u) {
    const Unit& unit = *model.units[u];
    if (!unit.due || std::find(left_out.begin(), left_out.end(), unit.id) != left_out.end()) continue;
    Minute finish = *unit.due;
    for (const int op : model.unit_ops[u]) {
      const std::string& id = model.ops[at(op)].as_given->id;
      if (std::find(unit.after_due.begin(), unit.after_due.end(), id) == unit.after_due.end())
        finish = std::max(finish, ends.end(op));
    }
    best.lateness += unit.weight * (finish - *unit.due);
  }
  best.ovens = ovens_bound(model, asked);
  return best;
}

}  // namespace dampward::line
