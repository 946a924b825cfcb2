#include "workbench/plan.h"

#include <algorithm>
#include <map>
#include <tuple>

#include "core/base/format.h"
#include "core/history/history.h"
#include "core/line/planner.h"
#include "core/moist_air/atmosphere.h"
#include "workbench/detail/drafts.h"
#include "workbench/detail/happened.h"
#include "workbench/detail/load_recipe.h"
#include "workbench/detail/mixing_report.h"
#include "workbench/detail/moved_steps.h"
#include "workbench/detail/plan_air.h"
#include "workbench/detail/plan_needs.h"
#include "workbench/detail/plan_report.h"
#include "workbench/detail/power_report.h"
#include "workbench/detail/ruling_air.h"
#include "workbench/detail/shop_line.h"
#include "workbench/workshop.h"

namespace dampward::workbench {
namespace {

// The daily records of one plan.
struct DailyRecords {
  records::Queue queue;
  std::vector<records::StockLot> stock;
  std::vector<records::AirReading> air;
  std::vector<history::Event> log;
};

Result<DailyRecords> read_records(const records::RecordStore& store) {
  const auto queue = store.queue();
  const auto stock = store.stock();
  const auto air = store.air();
  const auto log = store.log();
  Problems problems;
  const auto gather = [&](const auto& result) {
    if (!result.ok()) problems.insert(problems.end(), result.problems().begin(), result.problems().end());
  };
  gather(queue);
  gather(stock);
  gather(air);
  gather(log);
  if (!problems.empty()) return problems;
  return DailyRecords{*queue, *stock, *air, *log};
}

// First due first, then priority, then serial: the order of the file does not count.
QueuedUnits in_order(const records::Queue& queue) {
  QueuedUnits units;
  for (const auto& unit : queue.units) units.push_back(&unit);
  std::sort(units.begin(), units.end(), [](const auto* a, const auto* b) {
    const auto key = [](const records::QueuedUnit& unit) {
      const auto due = unit.due ? std::chrono::sys_days(*unit.due) : std::chrono::sys_days::max();
      return std::make_tuple(due, -unit.priority, unit.serial.text);
    };
    return key(*a) < key(*b);
  });
  return units;
}

// Loads, their timetable, the problem it solves, and the air it makes.
struct Timetable {
  Drafts drafts;
  line::Problem problem;
  line::Answer answer;
  PlanAir air;
};

// Drafts and times; a load that finds no time is halved and everything is timed again.
Timetable timetable(Drafts drafts, const DraftingTable& table, Instant from, const PlanOptions& options,
                    std::int64_t effort) {
  line::PlanOptions search;
  search.keep_going = options.keep_going;
  search.effort = effort;
  for (;;) {
    options.progress(format("timetable of {} units in {} loads", drafts.units.size(), drafts.loads.size()));
    line::Problem problem = shop_line(drafts.units, drafts.loads, table.workshop.shop, table.paint, from);
    auto answer = line::plan(problem, search);
    DAMPWARD_PROMISE(answer.ok(), "a shop that was read makes a sound timetable problem");
    if (!answer->unplaced.empty() && options.keep_going()) {
      Halving halving = halve_unplaced(drafts, *answer, table);
      if (halving.changed) {
        drafts = std::move(halving.drafts);
        continue;
      }
    }
    return {std::move(drafts), std::move(problem), std::move(answer).value(), {}};
  }
}

// A timetable whose air stays as it may be: units whose work would spoil it are refused, and the rest is planned again.
Timetable timetable_in_good_air(QueuedUnits baked, QueuedUnits cold, const DraftingTable& table, Instant from,
                                const WallClock& clock, const PlanOptions& options) {
  std::vector<Refusal> refused;
  for (;;) {
    const auto timed_with = [&](std::int64_t effort) {
      Timetable timed = timetable(draft_all(baked, cold, table), table, from, options, effort);
      options.progress("working out the air of the timetable");
      const PlanScenes scenes =
          scenes_of(timed.drafts.units, timed.drafts.loads, timed.answer, table.paint, table.workshop);
      timed.air = air_of(scenes, timed.problem, table.paint, table.workshop, from, clock);
      return timed;
    };
    Timetable timed = timed_with(options.effort);
    // A closer timetable may crowd the air; nobody is refused for that.
    if (!timed.air.refused.empty() && options.effort > 0) timed = timed_with(0);
    std::size_t units = baked.size() + cold.size();
    for (Refusal& refusal : timed.air.refused) {
      for (QueuedUnits* all : {&baked, &cold}) {
        std::erase_if(*all, [&](const auto* unit) {
          if (unit->serial != refusal.unit) return false;
          refusal.kind = unit->kind;
          refused.push_back(refusal);
          return true;
        });
      }
    }
    if (baked.size() + cold.size() == units) {
      DAMPWARD_PROMISE(timed.air.refused.empty(), "whatever spoils the air of a timetable is a unit of it");
      timed.drafts.refused.insert(timed.drafts.refused.end(), refused.begin(), refused.end());
      return timed;
    }
  }
}

// What the log tells up to `at`.
Result<history::History> history_until(const std::vector<history::Event>& log, Instant at,
                                       const WallClock& clock) {
  Problems problems;
  for (const history::Event& event : log) {
    if (event.at <= at) continue;
    problems.push_back({event.place,
                        format("{} at {}, later than --at {}", name_of(event), iso_text(event.at, clock),
                               iso_text(at, clock)),
                        "a log that ends by the time planned at",
                        "Plan at a later time, or correct the event if its time is wrong."});
  }
  if (!problems.empty()) return problems;
  return history::read_history(log);
}

// Units not begun whose work would spoil the air are refused; of those that are begun the lead is told. True: one was refused,
// so plan again.
bool take_out_of_bad_air(Happened& happened, const PlanAir& air) {
  bool any = false;
  for (Refusal refusal : air.refused) {
    const auto steps = happened.steps.find(refusal.unit);
    if (steps != happened.steps.end() && !steps->second.records.empty()) {
      const std::string stop = refusal.unit.text + ": stop before its next coat. " + refusal.reason;
      if (std::find(happened.doubts.begin(), happened.doubts.end(), stop) == happened.doubts.end())
        happened.doubts.push_back(stop);
      continue;
    }
    std::erase_if(happened.drafts.units, [&](const UnitDraft& unit) {
      if (unit.queued->serial != refusal.unit) return false;
      refusal.kind = unit.queued->kind;
      happened.drafts.refused.push_back(refusal);
      return any = true;
    });
  }
  return any;
}

// The timetable from `at` on: what has begun stays, the rest finds its place anew. Loads that nothing has gone into yet are
// halved like those of a new plan where they find no time.
Result<Timetable> timetable_on(Happened& happened, const Timetable& before, const history::History& history,
                               const DraftingTable& table, Instant from, const WallClock& clock,
                               const PlanOptions& options) {
  const line::Minute now = std::max<line::Minute>(0, line::minute_after(*options.at, from));
  for (;;) {
    options.progress("timetable from what has happened");
    line::Problem problem =
        shop_line(happened.drafts.units, happened.drafts.loads, table.workshop.shop, table.paint, from, now);
    fix_happened(problem, happened, history, table.workshop.shop, before.answer, from, now);
    line::PlanOptions search;
    search.keep_going = options.keep_going;
    search.earlier = &before.answer;
    auto answer = line::plan(problem, search);
    if (!answer) {
      Problems problems = answer.problems();
      for (Problem& wrong : problems) wrong.place = {"log.jsonl"};
      return problems;
    }
    if (!answer->unplaced.empty() && options.keep_going()) {
      Halving halving = halve_unplaced(happened.drafts, *answer, table, begun_loads(happened));
      if (halving.changed) {
        happened.drafts = std::move(halving.drafts);
        for (UnitDraft& unit : happened.drafts.units) {
          // Loads are drafted afresh; units dried cold are carried over as they stand.
          if (!unit.kind->cold) put_rework(unit.route, happened.steps.at(unit.queued->serial));
        }
        continue;
      }
    }
    const PlanScenes scenes =
        scenes_of(happened.drafts.units, happened.drafts.loads, *answer, table.paint, table.workshop);
    PlanAir air = air_of(scenes, problem, table.paint, table.workshop, from, clock);
    if (take_out_of_bad_air(happened, air)) continue;
    return Timetable{happened.drafts, std::move(problem), std::move(answer).value(), std::move(air)};
  }
}

// A unit that has begun and finds no time within a gap has most likely missed its window: how to say so.
void say_how_to_note(Plan& plan, const Happened& happened) {
  for (Refusal& refusal : plan.refused) {
    const auto steps = happened.steps.find(refusal.unit);
    if (steps == happened.steps.end() || steps->second.records.empty() ||
        refusal.rule != rule_of(line::Obstacle::gap))
      continue;
    refusal.settle = "If its time has run out, note it (--kind window_missed --unit " + refusal.unit.text +
                     ") and plan again: the way on is then planned.";
  }
}

Date last_coat_of(const std::vector<UnitPlan>& units, const Plan& plan) {
  Instant last = plan.from;
  for (const UnitPlan& unit : units) {
    for (const UnitStep& step : unit.steps) {
      if (step.id.find(".coat") != std::string::npos) last = std::max(last, step.starts);
    }
  }
  return Date(std::chrono::floor<std::chrono::days>(plan.clock.local(last)));
}

// Too few hands for a step that only its weight asks so many for is a matter of lifting: a lifting aid would do as well.
Rule rule_in_the_way(const UnitDraft& unit, const line::Unplaced& unplaced) {
  const Rule rule = rule_of(unplaced.obstacle, unplaced.by);
  const auto carried = [&](const route::Step& step) {
    return step.people > 1 && route::is_carried(step.code) &&
           unplaced.operation == unit.queued->serial.text + "/" + step.id;
  };
  const bool hands = rule == Rule::skill || rule == Rule::shift;
  const auto& steps = unit.route.steps;
  return hands && std::any_of(steps.begin(), steps.end(), carried) ? Rule::lifting : rule;
}

// Puts what was drafted and timed into the plan, in the workshop's words.
void tell(Plan& plan, const Timetable& timed, const PaintShop& paint, const DailyRecords& daily,
          const Workshop& workshop) {
  const Drafts& drafts = timed.drafts;
  const Placed placed = placed_operations(timed.answer);
  plan.loads = report_loads(drafts.loads, drafts.units, paint, placed, plan.from);
  plan.windows = report_windows(drafts.loads, drafts.units, placed, plan.from);
  plan.units = report_units(drafts.loads, drafts.units, placed, plan.clock, plan.from);
  for (const UnitPlan& unit : plan.units) {
    const bool there = std::any_of(plan.kinds.begin(), plan.kinds.end(),
                                   [&](const equipment::Kind& kind) { return kind.id == unit.kind; });
    if (!there) plan.kinds.push_back(*workshop.kinds.find(unit.kind));
  }
  plan.refused.insert(plan.refused.end(), drafts.refused.begin(), drafts.refused.end());
  std::vector<UnitDraft> planned;
  for (const UnitDraft& unit : drafts.units) {
    const auto unplaced =
        std::find_if(timed.answer.unplaced.begin(), timed.answer.unplaced.end(),
                     [&](const line::Unplaced& u) { return u.unit == unit.queued->serial.text; });
    if (unplaced == timed.answer.unplaced.end()) {
      planned.push_back(unit);
    } else {
      plan.refused.push_back({{rule_in_the_way(unit, *unplaced), unplaced->by, unplaced->reason,
                               "Change what stands in the way (" + unplaced->by + "), then plan again."},
                              unit.queued->serial,
                              unit.queued->kind});
    }
  }
  plan.stock = stock_needs(planned, paint, daily.stock, last_coat_of(plan.units, plan));
  plan.mixing = mixing_report(planned, plan.units, paint, daily.stock, plan.clock);
  plan.room = room_report(planned, paint, workshop.shop, timed.air, plan.from, plan.clock);
  plan.power = power_report(timed.problem, timed.answer, workshop.shop, plan.from);
  plan.people = timed.air.people;
  plan.cautions = cautions_for(plan.units, workshop.hazards);
  plan.problem = timed.problem;
  plan.answer = timed.answer;
  plan.objective = line::objective_of(timed.problem, timed.answer);
  std::vector<std::string> left_out;
  for (const line::Unplaced& unplaced : timed.answer.unplaced) left_out.push_back(unplaced.unit);
  plan.at_best = line::at_best(timed.problem, left_out);

  plan.warnings = warnings_for(planned, drafts.loads, paint, workshop.shop, plan);
}

// Recipes of the loads, with a warning for each that would be better split.
void tell_how_loads_mix(Plan& plan, const Drafts& drafts, const Workshop& workshop,
                        const moist_air::HumidAir& air) {
  tell_recipes(plan.loads, drafts, workshop, air);
  for (const Load& load : plan.loads) {
    if (!load.split.empty()) plan.warnings.push_back(load.id + ": " + load.recipe);
  }
}

}  // namespace

Result<Plan> make_plan(const Workshop& workshop, const records::RecordStore& store,
                       const PlanOptions& options) {
  const auto daily = read_records(store);
  if (!daily) return daily.problems();
  const std::optional<LocalTime> starts = options.from ? options.from : daily->queue.starts;
  if (!starts) {
    return Problem{{"queue.csv", 1, 0},
                   "no start of the work",
                   "a first line such as \"# start: 2026-11-30 07:00\"",
                   "Or say when with: plan DIR --from \"2026-11-30 07:00\"."};
  }
  Plan plan;
  plan.shop = workshop.shop.site.name;
  plan.clock = workshop.shop.site.clock;
  for (const auto& station : workshop.shop.stations) plan.names[station.id.text] = station.name;
  for (const auto& oven : workshop.shop.ovens) plan.names[oven.id.text] = oven.name;
  for (const auto& person : workshop.shop.crew) {
    plan.names[person.id.text] = person.name;
    if (!person.language.empty()) plan.languages[person.id.text] = person.language;
  }
  plan.cost_unit = workshop.shop.costs.unit;
  plan.from = plan.clock.instant(*starts);
  plan.queued = daily->queue.units.size();

  const auto air = ruling_air(daily->air, workshop.climate ? &*workshop.climate : nullptr, plan.from,
                              workshop.shop.site, workshop.shop.spray);
  if (!air) return air.problems();
  plan.air = *air;
  const Pressure pressure = moist_air::standard_pressure(workshop.shop.site.altitude);
  const auto paint = paint_shop(workshop, {plan.air.warmest, pressure});
  if (!paint) return paint.problems();
  plan.lacquer_name = paint->lacquer->name;

  const route::Means means{workshop.shop,
                           *paint->lacquer,
                           paint->thinner,
                           workshop.cleaners.rows(),
                           workshop.materials.rows(),
                           workshop.solvents.rows(),
                           workshop.hazards};
  const moist_air::HumidAir humid_air{plan.air.temperature, plan.air.humidity, pressure};

  const WatchedStretches watched = watched_stretches(workshop.shop, plan.from);
  std::map<KindId, KindCase> cases;
  QueuedUnits baked, cold;
  for (const auto* unit : in_order(daily->queue)) {
    const equipment::Kind* kind = workshop.kinds.find(unit->kind);
    DAMPWARD_PROMISE(kind != nullptr, "every kind of a queue that was read is known");
    if (!cases.contains(unit->kind)) {
      options.progress("limits and ovens of " + kind->name);
      cases.emplace(unit->kind, kind_case(*kind, workshop, means, humid_air, watched));
    }
    const KindCase& known = cases.at(unit->kind);
    if (known.refused) {
      plan.refused.push_back({*known.refused, unit->serial, unit->kind});
    } else {
      (known.cold ? cold : baked).push_back(unit);
    }
  }

  const RulingAir coating_air = dried(plan.air, workshop.shop.spray, pressure);
  const DraftingTable table{workshop, means, *paint, humid_air, coating_air, cases, options.progress};
  options.progress("putting units into loads");
  const Timetable timed = timetable_in_good_air(baked, cold, table, plan.from, plan.clock, options);
  if (!options.at) {
    tell(plan, timed, *paint, *daily, workshop);
    tell_how_loads_mix(plan, timed.drafts, workshop, humid_air);
    return plan;
  }
  plan.at = options.at;
  const auto history = history_until(daily->log, *options.at, plan.clock);
  if (!history) return history.problems();
  auto happened = as_happened(timed.drafts, *history, table);
  if (!happened) return happened.problems();
  Happened as_it_went = std::move(happened).value();
  const auto timed_on = timetable_on(as_it_went, timed, *history, table, plan.from, plan.clock, options);
  if (!timed_on) return timed_on.problems();
  tell(plan, *timed_on, *paint, *daily, workshop);
  tell_how_loads_mix(plan, timed_on->drafts, workshop, humid_air);
  plan.warnings.insert(plan.warnings.begin(), as_it_went.doubts.begin(), as_it_went.doubts.end());
  say_how_to_note(plan, as_it_went);
  plan.rework = as_it_went.rework;
  plan.moved = moved_steps(report_units(timed.drafts.loads, timed.drafts.units,
                                        placed_operations(timed.answer), plan.clock, plan.from),
                           plan, *history);
  return plan;
}

}  // namespace dampward::workbench
