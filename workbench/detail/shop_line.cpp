#include "workbench/detail/shop_line.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "core/base/format.h"
#include "core/base/promise.h"
#include "core/drying/oven_model.h"
#include "core/equipment/kind.h"
#include "core/shop/power.h"

namespace dampward::workbench {
namespace {

using line::Minute;
using route::StepCode;

const std::string vapour{vapour_capacity}, power{power_capacity};

// From switching off until neither element nor lamp can light vapour, and from opening the cans to the first coat: an oven
// beside the solvent work is cold for both. Estimates on the safe side; a bare element in still air falls from 700 to under
// 180 °C in less than 10 min (from memory).
constexpr Minute element_cools = 15, mixing_before_coat = 15;

// Vapour is counted in whole milligrams a minute: demands rounded up, what the air takes rounded down.
double milligrams_per_minute(MassFlow flow) {
  return flow.in(milligram / minute);
}
std::int64_t demanded(MassFlow flow) {
  return static_cast<std::int64_t>(std::ceil(milligrams_per_minute(flow)));
}
std::int64_t available(MassFlow flow) {
  return static_cast<std::int64_t>(std::floor(milligrams_per_minute(flow)));
}

Minute rounded_up(Duration time) {
  return static_cast<Minute>(std::ceil(time.in(minute)-1e-9));
}
Minute rounded_down(Duration time) {
  return static_cast<Minute>(std::floor(time.in(minute) + 1e-9));
}

line::Attendance attendance_of(route::Attendance attendance) {
  switch (attendance) {
    case route::Attendance::attended:
      return line::Attendance::attended;
    case route::Attendance::watched:
      return line::Attendance::watched;
    case route::Attendance::unattended:
      return line::Attendance::unattended;
  }
  return line::Attendance::attended;
}

// Work that nothing hurts by stopping for a break: all hands-on work but what stands in the oven's or the lacquer's time.
bool may_pause(StepCode code) {
  switch (code) {
    case StepCode::load:
    case StepCode::unload:
    case StepCode::cabinet_in:
    case StepCode::cabinet_out:
    case StepCode::tape:
    case StepCode::coat:
      return false;
    default:
      return true;
  }
}

bool served(const shop::Shop& shop, const std::string& skill) {
  return std::any_of(shop.stations.begin(), shop.stations.end(), [&](const shop::Station& station) {
    return std::find(station.serves.begin(), station.serves.end(), skill) != station.serves.end();
  });
}

// How long a step takes in the timetable: hands at their usual pace, waits at their longest.
Duration length_of(const UnitDraft& unit, const route::Step& step) {
  if (step.code == StepCode::coat) return unit.coat->one_coat_typical;
  if (step.code == StepCode::flash) return std::max(step.minutes.high, unit.coat->work.one_flash);
  return step.attendance == route::Attendance::attended ? step.minutes.typical : step.minutes.high;
}

// Whole watts: what is taken rounded up, what there is rounded down.
std::vector<line::Demand> power_demand(std::optional<Power> draws, const shop::Shop& shop) {
  if (!shop.site.power || !draws) return {};
  return {{power, static_cast<std::int64_t>(std::ceil(draws->in(watt))), 0}};
}

// What a coat gives off: while it goes on, all the gun can throw; afterwards what the film gives off, fastest at first and down to a
// tenth after one flash (release.h). The curve is laid under stairs, each a tail of the coat that holds the film's rate at its start,
// four to a flash and one more flash at a tenth; at most so much landed as the gun lands at its best.
std::vector<line::Demand> demands_of(const UnitDraft& unit, const route::Step& step, Minute length,
                                     const PaintShop& paint) {
  if (!paint.capacity || step.code != StepCode::coat) return {};
  const CoatCase& coat = *unit.coat;
  constexpr int stairs = 4;
  const Duration stair = coat.work.one_flash / stairs;
  const double leaves = std::log(10.0) * (static_cast<double>(length) * minute / coat.work.one_flash);
  const MassFlow film = -std::expm1(-leaves) * coat.gun->efficiency.high.fraction() * coat.volatiles;
  std::vector<line::Demand> demands;
  std::int64_t above = demanded(coat.volatiles);
  Minute until = 0;
  const auto step_down = [&](std::int64_t to, Minute next) {
    if (above > to) demands.push_back({vapour, above - to, until});
    above = to;
    until = next;
  };
  for (int i = 0; i < stairs; ++i) {
    const MassFlow then = std::pow(10.0, -static_cast<double>(i) / stairs) * film;
    step_down(std::min(above, demanded(then)), rounded_up((i + 1) * stair));
  }
  step_down(std::min(above, demanded(0.1 * film)), rounded_up(2 * coat.work.one_flash));
  step_down(0, 0);
  return demands;
}

// Solvent is in the open: coats, their flashes, the brush that touches up, a liquid cleaner until it is gone.
bool has_open_solvent(const UnitDraft& unit, const route::Step& step, const PaintShop& paint) {
  switch (step.code) {
    case StepCode::coat:
    case StepCode::flash:
    case StepCode::touch_up:
    case StepCode::film_dry:
      return paint.vapour.has_value();
    case StepCode::clean:
    case StepCode::solvent_free:
      return std::any_of(unit.route.cleaning.begin(), unit.route.cleaning.end(),
                         [](const route::CleanerChoice& choice) { return !choice.dry && choice.found; });
    default:
      return false;
  }
}

line::Operation operation_of(const UnitDraft& unit, const route::Step& step, const shop::Shop& shop,
                             const PaintShop& paint, const std::vector<LoadDraft>& loads) {
  line::Operation operation;
  operation.id = operation_id(unit, step, loads);
  operation.unit = unit.queued->serial.text;
  operation.length = rounded_up(length_of(unit, step));
  operation.attendance = attendance_of(step.attendance);
  operation.skill = step.skill;
  if (step.attendance == route::Attendance::attended) operation.people = step.people;
  // A shop that lists no station for a skill does that work wherever there is room.
  if (served(shop, step.station_skill)) operation.station_skill = step.station_skill;
  operation.demands = demands_of(unit, step, operation.length, paint);
  if (step.code == StepCode::coat) {
    const auto watts = power_demand(unit.coat->gun->draws, shop);
    operation.demands.insert(operation.demands.end(), watts.begin(), watts.end());
  }
  operation.solvent = has_open_solvent(unit, step, paint);
  if (operation.solvent) operation.clears = rounded_up(paint.purge);
  operation.pausable = step.attendance == route::Attendance::attended && may_pause(step.code);
  return operation;
}

Instant end_of(Date day, const WallClock& clock) {
  return clock.instant(std::chrono::local_days(day) + std::chrono::days(1));
}

line::Unit unit_of(const UnitDraft& unit, const shop::Shop& shop, Instant from,
                   const std::vector<LoadDraft>& loads) {
  line::Unit promised;
  promised.id = unit.queued->serial.text;
  promised.priority = unit.queued->priority;
  if (unit.queued->due) promised.due = line::minute_at(end_of(*unit.queued->due, shop.site.clock), from);
  for (const route::Step& step : unit.route.steps) {
    if (step.code == StepCode::recheck) promised.after_due.push_back(operation_id(unit, step, loads));
  }
  return promised;
}

void add_load(line::Problem& problem, const LoadDraft& draft, std::size_t place, const shop::Shop& shop,
              const std::vector<UnitDraft>& units, const std::vector<LoadDraft>& loads) {
  line::Load load{draft.id, {draft.oven->id.text}, "", {}, draft.bake.set};
  line::Operation bake;
  bake.id = draft.id + "/bake";
  bake.length = rounded_up(draft.in_oven());
  bake.attendance = line::Attendance::watched;
  bake.demands = power_demand(shop::draws(*draft.oven), shop);
  for (const UnitDraft& unit : units) {
    if (unit.kind->cold || unit.load != place) continue;
    line::Member member;
    member.needs = bake.length;
    member.volume = equipment::outer_volume(*unit.kind->kind);
    member.mass = unit.kind->kind->mass.value.high;
    for (const route::Step& step : unit.route.steps) {
      const std::string id = operation_id(unit, step, loads);
      if (step.code == StepCode::load) member.loading = id;
      if (step.code == StepCode::unload) member.unloading = id;
      if (step.code == StepCode::bake) bake.skill = step.skill;
    }
    load.members.push_back(member);
    if (draft.held) {
      problem.gaps.push_back({format("damp back in the held load {}", draft.id), bake.id, member.unloading, 0,
                              rounded_down(draft.held->at_most)});
    }
  }
  if (load.members.empty()) return;  // every unit of it turned out refused
  load.bake = bake.id;
  problem.operations.push_back(bake);
  problem.loads.push_back(load);
}

void add_gaps(line::Problem& problem, const UnitDraft& unit, const std::vector<LoadDraft>& loads) {
  std::map<std::string, const route::Step*> steps;
  for (const route::Step& step : unit.route.steps) steps[step.id] = &step;
  for (const route::StepGap& gap : unit.route.gaps) {
    const route::Step& from = *steps.at(gap.from);
    const route::Step& to = *steps.at(gap.to);
    // What happens inside the oven is the load's own order, not the unit's.
    if (from.code == StepCode::bake || to.code == StepCode::bake) continue;
    line::Gap between;
    between.name = gap.reason.empty() ? gap.from + " to " + gap.to + " of " + unit.queued->serial.text
                                      : unit.queued->serial.text + ": " + gap.reason;
    between.from = operation_id(unit, from, loads);
    between.to = operation_id(unit, to, loads);
    between.shortest = rounded_up(gap.shortest);
    if (gap.longest) {
      const Minute inside = gap.to_end ? rounded_up(length_of(unit, to)) : 0;
      between.longest = std::max<Minute>(0, rounded_down(*gap.longest) - inside);
    }
    problem.gaps.push_back(between);
  }
}

// Long enough for the whole queue, however slow: two weeks, and a day for each unit.
Minute horizon_for(std::size_t units) {
  return static_cast<Minute>(24 * 60 * (14 + units));
}

}  // namespace

std::string operation_id(const UnitDraft& unit, const route::Step& step,
                         const std::vector<LoadDraft>& loads) {
  if (step.code == StepCode::bake && !unit.kind->cold) return loads[unit.load].id + "/bake";
  return unit.queued->serial.text + "/" + step.id;
}

line::Problem shop_line(const std::vector<UnitDraft>& units, const std::vector<LoadDraft>& loads,
                        const shop::Shop& shop, const PaintShop& paint, Instant from, line::Minute now) {
  line::Problem problem;
  problem.horizon = now + horizon_for(units.size());
  const WallClock& clock = shop.site.clock;
  for (const shop::Person& person : shop.crew) {
    problem.people.push_back({person.id.text, person.skills,
                              line::calendar_of(person.shifts, clock, from, problem.horizon),
                              line::daily(person.breaks, clock, from, problem.horizon)});
  }
  for (const shop::Station& station : shop.stations) {
    problem.stations.push_back({station.id.text, station.places, station.serves});
  }
  for (const shop::Oven& oven : shop.ovens) {
    const bool near = near_solvent(oven, shop.spray);
    problem.ovens.push_back({oven.id.text, line::calendar_of(oven.powered, clock, from, problem.horizon),
                             near, near ? element_cools + mixing_before_coat : 0,
                             fullest * drying::inside_volume(oven), std::nullopt});
  }
  if (paint.capacity) {
    problem.capacities.push_back({vapour, {{0, available(paint.most_at_once)}}});
  }
  if (shop.site.power) {
    const double left = std::floor(shop.site.power->left().in(watt));
    problem.capacities.push_back({power, {{0, static_cast<std::int64_t>(left)}}});
  }
  for (const UnitDraft& unit : units) {
    problem.units.push_back(unit_of(unit, shop, from, loads));
    for (const route::Step& step : unit.route.steps) {
      if (step.code == StepCode::bake) continue;
      problem.operations.push_back(operation_of(unit, step, shop, paint, loads));
    }
    add_gaps(problem, unit, loads);
  }
  for (std::size_t i = 0; i < loads.size(); ++i) add_load(problem, loads[i], i, shop, units, loads);
  return problem;
}

}  // namespace dampward::workbench
