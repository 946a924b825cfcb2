#include "workbench/plan_difference.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "workbench/detail/difference_words.h"
#include "workbench/plan.h"

namespace dampward::workbench {
namespace {

// Whether two figures differ once both are rounded to the last digit a reader sees.
bool differ(double a, double b, double digit) {
  return std::round(a / digit) != std::round(b / digit);
}
bool differ(Temperature a, Temperature b) {
  return differ(a.celsius(), b.celsius(), 0.1);
}
bool differ(Duration a, Duration b) {
  return differ(a.in(minute), b.in(minute), 1);
}
bool differ(const Range<Volume>& a, const Range<Volume>& b) {
  constexpr double digit = 0.01;
  return differ(a.low.in(litre), b.low.in(litre), digit) ||
         differ(a.typical.in(litre), b.typical.in(litre), digit) ||
         differ(a.high.in(litre), b.high.in(litre), digit);
}
bool differ(const std::optional<double>& a, const std::optional<double>& b, double digit) {
  return a.has_value() != b.has_value() || (a && differ(*a, *b, digit));
}
bool differ(VolumeFlow a, VolumeFlow b) {
  return differ(a.in(cubic_metre_per_minute), b.in(cubic_metre_per_minute), 0.1);
}

const UnitPlan* unit_of(const Plan& plan, const UnitId& unit) {
  const auto found =
      std::find_if(plan.units.begin(), plan.units.end(), [&](const UnitPlan& u) { return u.unit == unit; });
  return found == plan.units.end() ? nullptr : &*found;
}

const Load* load_of(const Plan& plan, const UnitPlan& unit) {
  const auto found =
      std::find_if(plan.loads.begin(), plan.loads.end(), [&](const Load& l) { return l.id == unit.load; });
  return found == plan.loads.end() ? nullptr : &*found;
}

const Window* window_of(const Plan& plan, const UnitId& unit) {
  const auto found =
      std::find_if(plan.windows.begin(), plan.windows.end(), [&](const Window& w) { return w.unit == unit; });
  return found == plan.windows.end() ? nullptr : &*found;
}

bool is_late(const UnitPlan& unit) {
  return unit.due && unit.done > *unit.due;
}

std::optional<Instant> finish_of(const Plan& plan) {
  std::optional<Instant> last;
  for (const UnitPlan& unit : plan.units) last = std::max(last.value_or(unit.done), unit.done);
  return last;
}

std::map<PersonId, Duration> hands_on(const Plan& plan) {
  std::map<PersonId, Duration> work;
  for (const UnitPlan& unit : plan.units) {
    for (const UnitStep& step : unit.steps) {
      if (step.attendance != "attended") continue;
      for (const PersonId& person : step.people) {
        work[person] += static_cast<double>((step.ends - step.starts).count()) * second;
      }
    }
  }
  return work;
}

void compare_bakes(const Load& before, const Load& after, const UnitId& unit, PlanDifference& difference) {
  if (differ(before.set_point, after.set_point) || differ(before.hold, after.hold) ||
      differ(before.warm_up, after.warm_up)) {
    difference.bakes.push_back({unit,
                                {before.set_point, after.set_point},
                                {before.warm_up, after.warm_up},
                                {before.hold, after.hold}});
  }
  for (const PartInOven& part : before.parts) {
    if (part.unit != unit) continue;
    const auto again = std::find_if(after.parts.begin(), after.parts.end(), [&](const PartInOven& other) {
      return other.unit == unit && other.part == part.part;
    });
    if (again != after.parts.end() && differ(part.peak, again->peak))
      difference.peaks.push_back({unit, part.part, part.name, {part.peak, again->peak}});
  }
}

void compare_units(const Plan& before, const Plan& after, PlanDifference& difference) {
  for (const UnitPlan& unit : before.units) {
    const UnitPlan* again = unit_of(after, unit.unit);
    if (again == nullptr) continue;
    if (unit.done != again->done) difference.finishes.push_back({unit.unit, {unit.done, again->done}});
    if (is_late(*again) && !is_late(unit)) difference.newly_late.push_back(unit.unit);
    if (is_late(unit) && !is_late(*again)) difference.no_longer_late.push_back(unit.unit);

    const Load *load = load_of(before, unit), *load_again = load_of(after, *again);
    const OvenId oven = load == nullptr ? OvenId() : load->oven;
    const OvenId oven_again = load_again == nullptr ? OvenId() : load_again->oven;
    if (oven != oven_again) difference.heat.push_back({unit.unit, {oven, oven_again}});
    if (load != nullptr && load_again != nullptr) compare_bakes(*load, *load_again, unit.unit, difference);

    const Window *window = window_of(before, unit.unit), *window_again = window_of(after, unit.unit);
    if (window != nullptr && window_again != nullptr &&
        (differ(window->opens_after, window_again->opens_after) ||
         differ(window->closes_after, window_again->closes_after))) {
      difference.windows.push_back({unit.unit,
                                    {window->opens_after, window_again->opens_after},
                                    {window->closes_after, window_again->closes_after}});
    }
  }
}

void compare_who_is_treated(const Plan& before, const Plan& after, PlanDifference& difference) {
  for (const UnitPlan& unit : after.units) {
    if (unit_of(before, unit.unit) == nullptr) difference.gained.push_back(unit.unit);
  }
  for (const Refusal& refusal : after.refused) {
    if (unit_of(before, refusal.unit) == nullptr) continue;
    difference.lost.push_back({refusal.unit, std::string(word(refusal.rule)), refusal.reason});
  }
}

void compare_needs(const Plan& before, const Plan& after, PlanDifference& difference) {
  const auto need_of = [](const Plan& plan, const std::string& item) {
    const auto found = std::find_if(plan.stock.begin(), plan.stock.end(),
                                    [&](const StockNeed& need) { return need.item == item; });
    return found == plan.stock.end() ? Range<Volume>{} : found->needed;
  };
  for (const StockNeed& need : before.stock) {
    const Range<Volume> again = need_of(after, need.item);
    if (differ(need.needed, again)) difference.needs.push_back({need.item, need.name, {need.needed, again}});
  }
  for (const StockNeed& need : after.stock) {
    const bool known = std::any_of(before.stock.begin(), before.stock.end(),
                                   [&](const StockNeed& other) { return other.item == need.item; });
    if (!known) difference.needs.push_back({need.item, need.name, {{}, need.needed}});
  }
}

void compare_work(const Plan& before, const Plan& after, PlanDifference& difference) {
  std::map<PersonId, Moved<Duration>> both;
  for (const auto& [person, time] : hands_on(before)) both[person].before = time;
  for (const auto& [person, time] : hands_on(after)) both[person].after = time;
  for (const auto& [person, time] : both) {
    if (differ(time.before.in(hour), time.after.in(hour), 0.1)) difference.work.push_back({person, time});
  }
}

void compare_rooms(const RoomAir& before, const RoomAir& after, PlanDifference& difference) {
  const bool people_differ = before.fan_people.has_value() != after.fan_people.has_value() ||
                             (before.fan_people && differ(*before.fan_people, *after.fan_people));
  const bool moved = differ(before.worst_share, after.worst_share, 0.001) ||
                     differ(before.exposure_index, after.exposure_index, 0.01) ||
                     before.respirator != after.respirator || differ(before.fan, after.fan) ||
                     differ(before.fan_fire, after.fan_fire) || people_differ;
  if (!moved) return;
  difference.room = MovedRoom{after.place,
                              {before.worst_share, after.worst_share},
                              {before.exposure_index, after.exposure_index},
                              {before.respirator, after.respirator},
                              {before.fan, after.fan},
                              {before.fan_fire, after.fan_fire},
                              {before.fan_people, after.fan_people}};
}

}  // namespace

bool PlanDifference::nothing_moved() const {
  return gained.empty() && lost.empty() && finishes.empty() && heat.empty() && bakes.empty() &&
         peaks.empty() && windows.empty() && needs.empty() && work.empty() && !room;
}

PlanDifference plan_difference(const Plan& before, const Plan& after, std::vector<ChangedValue> changes) {
  PlanDifference difference;
  difference.changes = std::move(changes);
  compare_who_is_treated(before, after, difference);
  compare_units(before, after, difference);
  const auto first = finish_of(before), second = finish_of(after);
  if (first && second) difference.finish = {*first, *second};
  compare_needs(before, after, difference);
  compare_work(before, after, difference);
  compare_rooms(before.room, after.room, difference);
  difference.words = difference_words(difference, after.clock);
  return difference;
}

}  // namespace dampward::workbench
