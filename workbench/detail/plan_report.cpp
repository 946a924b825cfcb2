#include "workbench/detail/plan_report.h"

#include <algorithm>

#include "core/base/format.h"
#include "core/drying/load_run.h"
#include "core/drying/oven_model.h"
#include "core/equipment/kind.h"
#include "core/room_air/wet_work.h"
#include "workbench/detail/part_words.h"
#include "workbench/detail/window_words.h"

namespace dampward::workbench {
namespace {

using route::StepCode;

bool is_planned(const UnitDraft& unit, const std::vector<LoadDraft>& loads, const Placed& placed) {
  // Of a unit without a place, what has happened stands in the answer all the same.
  return !unit.route.steps.empty() &&
         std::all_of(unit.route.steps.begin(), unit.route.steps.end(), [&](const route::Step& step) {
           return placed.contains(operation_id(unit, step, loads));
         });
}

const route::Step* step_of(const UnitDraft& unit, StepCode code) {
  for (const route::Step& step : unit.route.steps) {
    if (step.code == code) return &step;
  }
  return nullptr;
}

Instant last_flash_of(const UnitDraft& unit, const std::vector<LoadDraft>& loads, const Placed& placed,
                      Instant from) {
  Instant last = from;
  for (const route::Step& step : unit.route.steps) {
    if (step.code != StepCode::flash) continue;
    last = std::max(last, line::instant_of(placed.at(operation_id(unit, step, loads))->end, from));
  }
  return last;
}

Instant start_of(const UnitDraft& unit, StepCode code, const std::vector<LoadDraft>& loads,
                 const Placed& placed, Instant from) {
  return line::instant_of(placed.at(operation_id(unit, *step_of(unit, code), loads))->start, from);
}

Instant end_of(const UnitDraft& unit, StepCode code, const std::vector<LoadDraft>& loads,
               const Placed& placed, Instant from) {
  return line::instant_of(placed.at(operation_id(unit, *step_of(unit, code), loads))->end, from);
}

// Of the kind whose heaviest lump comes last.
TemperatureCurve slowest_of(const drying::BakePlan& bake) {
  return std::max_element(bake.pieces.begin(), bake.pieces.end(),
                          [](const drying::PieceBake& a, const drying::PieceBake& b) {
                            return a.heavy_cooling.typical < b.heavy_cooling.typical;
                          })
      ->heavy;
}

// What one coat lays on the unit at most, all of it vapour in the oven's hottest air.
double wet_share(const UnitDraft& unit, const LoadDraft& load, const PaintShop& paint) {
  const Mass film = unit.coat->gun->efficiency.high.fraction() * unit.coat->volatiles_of_coat;
  return room_air::wet_in_oven(film, paint.worst_for_fire, drying::inside_volume(*load.oven),
                               {load.bake.set + load.bake.excess.sum(), paint.air.pressure});
}

std::string attendance_word(route::Attendance attendance) {
  switch (attendance) {
    case route::Attendance::attended:
      return "attended";
    case route::Attendance::watched:
      return "watched";
    case route::Attendance::unattended:
      return "unattended";
  }
  return "";
}

UnitStep unit_step(const route::Step& step, const line::Placement& placement, Instant from) {
  UnitStep told{step.id,
                step.title,
                step.reason,
                step.skill,
                attendance_word(step.attendance),
                step.hazard_step,
                step.hazard_step_too,
                step.minutes,
                line::instant_of(placement.start, from),
                line::instant_of(placement.end, from),
                {},
                placement.station};
  for (const auto& person : placement.people) told.people.push_back(PersonId(person));
  return told;
}

UnitPlan unit_plan(const UnitDraft& unit, const std::vector<LoadDraft>& loads, const Placed& placed,
                   const WallClock& clock, Instant from) {
  UnitPlan plan;
  plan.unit = unit.queued->serial;
  plan.kind = unit.queued->kind;
  plan.kind_name = unit.kind->kind->name;
  plan.way =
      unit.route.way.way == equipment::CoatingWay::spray_stripped ? "spray_stripped" : "brush_assembled";
  plan.way_reason = unit.route.way.reason;
  plan.kind_way_reason = unit.kind->kind->way_reason;
  plan.spray_hands = unit.route.way.spray.total().typical;
  plan.brush_hands = unit.route.way.brush.total().typical;
  plan.no_heat = unit.kind->cold.has_value();
  if (plan.no_heat) {
    const ColdCase& cold = *unit.kind->cold;
    plan.no_heat_reason = cold.reason;
    if (cold.saving) {
      std::vector<std::string> names;
      for (const auto& measurement : cold.saving->measure)
        names.push_back(measurement.name + ": " + measurement.settle);
      for (const auto& name : names) plan.measure += (plan.measure.empty() ? "" : "; ") + name;
      plan.saves = cold.saving->saved();
    }
    plan.notes.insert(plan.notes.end(), cold.by_oven.begin(), cold.by_oven.end());
    if (!cold.plan.words.empty()) plan.notes.push_back(cold.plan.words);
  } else {
    plan.load = loads[unit.load].id;
  }
  plan.lists = unit.route.lists;
  for (const equipment::Part& part : unit.kind->kind->parts) {
    for (const HazardId& hazard : part.hazards) {
      if (std::find(plan.hazards.begin(), plan.hazards.end(), hazard) == plan.hazards.end())
        plan.hazards.push_back(hazard);
    }
  }
  plan.findings = unit.queued->findings;
  plan.transmits = unit.kind->kind->transmits;
  plan.semiconductors = unit.kind->kind->semiconductors;
  plan.lacquer = unit.coat->consumption.lacquer;
  plan.thinner = unit.coat->consumption.thinner;
  plan.coats = unit.coat->consumption.coats;
  plan.wet_coat = unit.coat->consumption.wet_coat;
  if (!unit.route.masking_reason.empty()) plan.notes.push_back(unit.route.masking_reason);
  if (!unit.route.valves.empty()) plan.notes.push_back(unit.route.valves);
  if (unit.queued->due)
    plan.due = clock.instant(std::chrono::local_days(*unit.queued->due) + std::chrono::days(1));
  for (const route::Step& step : unit.route.steps) {
    plan.steps.push_back(unit_step(step, *placed.at(operation_id(unit, step, loads)), from));
    if (step.code != StepCode::recheck) plan.done = std::max(plan.done, plan.steps.back().ends);
  }
  return plan;
}

}  // namespace

Placed placed_operations(const line::Answer& answer) {
  Placed placed;
  for (const line::Placement& placement : answer.placements) placed[placement.operation] = &placement;
  return placed;
}

std::vector<Load> report_loads(const std::vector<LoadDraft>& loads, const std::vector<UnitDraft>& units,
                               const PaintShop& paint, const Placed& placed, Instant from) {
  std::vector<Load> told;
  for (std::size_t i = 0; i < loads.size(); ++i) {
    const LoadDraft& draft = loads[i];
    const auto bake = placed.find(draft.id + "/bake");
    if (bake == placed.end()) continue;
    Load load;
    load.id = draft.id;
    load.oven = draft.oven->id;
    load.oven_name = draft.oven->name;
    load.set_point = draft.bake.set;
    load.warm_up = draft.bake.plateau + draft.bake.warm_up;
    load.hold = draft.bake.hold;
    load.hold_nominal = draft.bake.hold_nominal;
    load.rule = draft.bake.rule;
    if (draft.held) {
      const drying::StepDown& down = draft.held->down;
      load.step_down = StepDownHold{down.set, down.takes, draft.held->at_most, down.humidity};
    }
    load.weakest_part = draft.bake.weakest_part;
    load.slowest = slowest_of(draft.bake);
    load.holds_from = draft.bake.set - draft.oven->evenness - drying::reached_within;
    load.spread = draft.bake.excess.evenness + draft.bake.excess.swing;
    load.starts = line::instant_of(bake->second->start, from);
    for (const UnitDraft& unit : units) {
      if (unit.kind->cold || unit.load != i || !is_planned(unit, loads, placed)) continue;
      const Instant out = start_of(unit, StepCode::unload, loads, placed, from);
      load.first_out = load.units.empty() ? out : std::min(load.first_out, out);
      load.last_out = std::max(load.last_out, out);
      if (load.weakest_unit.empty() && unit.kind->kind->id == draft.bake.weakest_kind) {
        load.weakest_unit = unit.queued->serial;
      }
      load.units.push_back(unit.queued->serial);
      if (paint.vapour) load.wet_share = std::max(load.wet_share.value_or(0), wet_share(unit, draft, paint));
      for (const auto& part : draft.bake.parts) {
        if (part.kind == unit.kind->kind->id)
          load.parts.push_back(part_in_oven(part, unit.queued->serial, unit.kind->piece));
        if (part.kind == draft.bake.weakest_kind && part.part == draft.bake.weakest_part)
          load.weakest_name = part.name;
      }
    }
    if (!load.units.empty()) told.push_back(load);
  }
  std::stable_sort(told.begin(), told.end(),
                   [](const Load& a, const Load& b) { return a.starts < b.starts; });
  return told;
}

std::vector<Window> report_windows(const std::vector<LoadDraft>& loads, const std::vector<UnitDraft>& units,
                                   const Placed& placed, Instant from) {
  std::vector<Window> told;
  for (const UnitDraft& unit : units) {
    if (unit.kind->cold || !is_planned(unit, loads, placed)) continue;
    const coating::WarmWindow& window = *unit.window;
    Window seen;
    seen.unit = unit.queued->serial;
    seen.leaves_oven = end_of(unit, StepCode::unload, loads, placed, from);
    seen.first_coat = start_of(unit, StepCode::coat, loads, placed, from);
    seen.opens_after = window.opens;
    seen.closes_after = *window.closes;
    seen.opened_by = opened_words(window);
    seen.closed_by = closed_words(window);
    seen.trade_opens_after = unit.trade->trade_begins;
    const Instant last_flash = last_flash_of(unit, loads, placed, from);
    seen.damp_back =
        damp_back_in(unit, std::chrono::duration<double>(last_flash - seen.leaves_oven).count() * second);
    told.push_back(seen);
  }
  return told;
}

std::vector<UnitPlan> report_units(const std::vector<LoadDraft>& loads, const std::vector<UnitDraft>& units,
                                   const Placed& placed, const WallClock& clock, Instant from) {
  std::vector<UnitPlan> told;
  for (const UnitDraft& unit : units) {
    if (is_planned(unit, loads, placed)) told.push_back(unit_plan(unit, loads, placed, clock, from));
  }
  return told;
}

}  // namespace dampward::workbench
