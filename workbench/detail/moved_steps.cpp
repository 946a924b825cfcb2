#include "workbench/detail/moved_steps.h"

#include <algorithm>
#include <map>

#include "core/base/format.h"

namespace dampward::workbench {
namespace {

struct Place {
  const UnitPlan* unit;
  const UnitStep* step;
  std::size_t at;  // in the unit's steps
};

std::string when(Instant instant, const WallClock& clock) {
  const LocalTime local = clock.local(instant);
  return iso_text(Date(std::chrono::floor<std::chrono::days>(local))) + " " + clock_text(local);
}

bool shares_person(const UnitStep& a, const UnitStep& b) {
  return std::any_of(a.people.begin(), a.people.end(), [&](const PersonId& person) {
    return std::find(b.people.begin(), b.people.end(), person) != b.people.end();
  });
}

class Explainer {
 public:
  Explainer(const std::vector<UnitPlan>& before, const Plan& plan, const history::History& history)
      : plan_(plan), history_(history) {
    for (const UnitPlan& unit : before) {
      for (std::size_t i = 0; i < unit.steps.size(); ++i)
        was_[key(unit, unit.steps[i])] = {&unit, &unit.steps[i], i};
    }
    for (const UnitPlan& unit : plan.units) {
      for (std::size_t i = 0; i < unit.steps.size(); ++i) {
        const auto found = was_.find(key(unit, unit.steps[i]));
        if (found == was_.end() || found->second.step->starts != unit.steps[i].starts)
          moved_.push_back({&unit, &unit.steps[i], i});
      }
    }
    std::stable_sort(moved_.begin(), moved_.end(),
                     [](const Place& a, const Place& b) { return a.step->starts < b.step->starts; });
  }

  std::vector<MovedStep> all() const {
    std::vector<MovedStep> told;
    for (const Place& place : moved_) {
      const auto found = was_.find(key(*place.unit, *place.step));
      if (found == was_.end()) continue;  // put in by rework, which tells of it
      told.push_back({place.unit->unit, place.step->id, found->second.step->starts, place.step->starts,
                      why(place, *found->second.step)});
    }
    return told;
  }

 private:
  static std::string key(const UnitPlan& unit, const UnitStep& step) {
    return unit.unit.text + "/" + step.id;
  }

  std::string clock(Instant instant) const { return when(instant, plan_.clock); }

  std::string why(const Place& place, const UnitStep& was) const {
    const UnitStep& step = *place.step;
    if (step.starts < *plan_.at) return logged(place);
    for (const Rework& rework : plan_.rework) {
      if (rework.unit == place.unit->unit)
        return format("{} was thrown back by event {} ({}); the way on is {}.", rework.unit.text,
                      rework.event, rework.cause, rework.ways[rework.chosen].way);
    }
    for (const history::Absence& absence : history_.absences) {
      const bool planned =
          std::find(was.people.begin(), was.people.end(), absence.person) != was.people.end();
      if (planned && was.starts < absence.until && was.ends > absence.from)
        return format("{}, who was to do it, is absent until {} (event {}).", absence.person.text,
                      clock(absence.until), absence.event);
    }
    for (const history::Outage& outage : history_.outages) {
      if (was.station == outage.oven.text && was.starts < outage.until && was.ends > outage.from)
        return format("The oven {} is out until {} (event {}).", outage.oven.text, clock(outage.until),
                      outage.event);
    }
    if (was.starts < *plan_.at)
      return format("It should have begun {}, and the log up to {} does not say that it did.",
                    clock(was.starts), clock(*plan_.at));
    if (const UnitStep* earlier = moved_before(place))
      return format("{} of the same unit, which comes before it, now ends {}.", earlier->id,
                    clock(earlier->ends));
    if (const Place* other = in_the_way(place))
      return format(
          "{} of {} has moved and now has {} until {}.", other->step->id, other->unit->unit.text,
          shares_person(*other->step, step) ? other->step->people.front().text : other->step->station,
          clock(other->step->ends));
    if (step.starts < was.starts) return "Other work has moved and left its people and place free sooner.";
    return "Other work of its load, its people or its place has moved, and this is the first time that suits "
           "all of them.";
  }

  // It began before the time planned at, so the log tells of it.
  std::string logged(const Place& place) const {
    for (const history::StepRecord& record : history_.steps) {
      if (record.step == place.step->id && record.unit == place.unit->unit)
        return format("It began {} (event {}).", clock(record.started), record.event);
    }
    return "It began with its load, as the log tells of another unit in the same oven.";
  }

  // The last of the unit's earlier steps that moved and ends before this begins.
  const UnitStep* moved_before(const Place& place) const {
    const UnitStep* last = nullptr;
    for (const Place& other : moved_) {
      if (other.unit != place.unit || other.at >= place.at || other.step->ends > place.step->starts) continue;
      if (last == nullptr || other.step->ends > last->ends) last = other.step;
    }
    return last;
  }

  // A moved step of another unit that holds a person or the place of this one right up to its beginning.
  const Place* in_the_way(const Place& place) const {
    for (const Place& other : moved_) {
      if (other.unit == place.unit || other.step->ends != place.step->starts) continue;
      const bool same_place = !other.step->station.empty() && other.step->station == place.step->station;
      if (same_place || shares_person(*other.step, *place.step)) return &other;
    }
    return nullptr;
  }

  const Plan& plan_;
  const history::History& history_;
  std::map<std::string, Place> was_;
  std::vector<Place> moved_;
};

}  // namespace

std::vector<MovedStep> moved_steps(const std::vector<UnitPlan>& before, const Plan& plan,
                                   const history::History& history) {
  return Explainer(before, plan, history).all();
}

}  // namespace dampward::workbench
