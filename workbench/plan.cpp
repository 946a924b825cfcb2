#include "workbench/plan.h"

#include <algorithm>
#include <map>
#include <tuple>

#include "core/base/format.h"
#include "core/line/planner.h"
#include "core/moist_air/atmosphere.h"
#include "workbench/detail/drafts.h"
#include "workbench/detail/plan_needs.h"
#include "workbench/detail/plan_report.h"
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
};

Result<DailyRecords> read_records(const records::RecordStore& store) {
  const auto queue = store.queue();
  const auto stock = store.stock();
  const auto air = store.air();
  Problems problems;
  const auto gather = [&](const auto& result) {
    if (!result.ok()) problems.insert(problems.end(), result.problems().begin(), result.problems().end());
  };
  gather(queue);
  gather(stock);
  gather(air);
  if (!problems.empty()) return problems;
  return DailyRecords{*queue, *stock, *air};
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

}  // namespace

Result<Plan> make_plan(const Workshop& workshop, const records::RecordStore& store, const PlanOptions& options) {
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
  plan.from = plan.clock.instant(*starts);
  plan.queued = daily->queue.units.size();

  const auto air = ruling_air(daily->air, workshop.climate ? &*workshop.climate : nullptr, plan.from, workshop.shop.site);
  if (!air) return air.problems();
  plan.air = *air;
  const Pressure pressure = moist_air::standard_pressure(workshop.shop.site.altitude);
  const auto paint = paint_shop(workshop, {plan.air.temperature, pressure});
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
  const coating::ShopAir shop_air{plan.air.temperature, plan.air.dew_point, plan.air.humidity};

  options.progress("working out each kind's limits and ovens");
  std::map<KindId, KindCase> cases;
  QueuedUnits baked, cold;
  for (const auto* unit : in_order(daily->queue)) {
    const equipment::Kind* kind = workshop.kinds.find(unit->kind);
    DAMPWARD_PROMISE(kind != nullptr, "every kind of a queue that was read is known");
    if (!cases.contains(unit->kind)) cases.emplace(unit->kind, kind_case(*kind, workshop, means, humid_air));
    const KindCase& known = cases.at(unit->kind);
    if (known.refused) {
      plan.refused.push_back({unit->serial, unit->kind, known.refused->reason, known.refused->settle});
    } else {
      (known.cold ? cold : baked).push_back(unit);
    }
  }

  const DraftingTable table{workshop, means, *paint, humid_air, shop_air, cases};
  options.progress("putting units into loads");
  Drafts drafts = draft_all(baked, cold, table);
  line::Answer answer;
  for (;;) {
    options.progress(format("timetable of {} units in {} loads", drafts.units.size(), drafts.loads.size()));
    const auto timetable = line::plan(shop_line(drafts.units, drafts.loads, workshop.shop, *paint, plan.from),
                                      {options.keep_going});
    DAMPWARD_PROMISE(timetable.ok(), "a shop that was read makes a sound timetable problem");
    answer = *timetable;
    if (answer.unplaced.empty() || !options.keep_going()) break;
    Halving halving = halve_unplaced(drafts, answer, table);
    if (!halving.changed) break;
    drafts = std::move(halving.drafts);
  }

  const Placed placed = placed_operations(answer);
  plan.loads = report_loads(drafts.loads, drafts.units, placed, plan.from);
  plan.windows = report_windows(drafts.loads, drafts.units, placed, plan.from);
  plan.units = report_units(drafts.loads, drafts.units, placed, plan.clock, plan.from);
  plan.refused.insert(plan.refused.end(), drafts.refused.begin(), drafts.refused.end());
  for (const auto& unplaced : answer.unplaced) {
    for (const UnitDraft& unit : drafts.units) {
      if (unit.queued->serial.text != unplaced.unit) continue;
      plan.refused.push_back({unit.queued->serial, unit.queued->kind, unplaced.reason,
                              "Change what stands in the way (" + unplaced.by + "), then plan again."});
    }
  }
  std::vector<UnitDraft> planned;
  for (const UnitDraft& unit : drafts.units) {
    const bool is_in = std::any_of(plan.units.begin(), plan.units.end(),
                                   [&](const UnitPlan& told) { return told.unit == unit.queued->serial; });
    if (is_in) planned.push_back(unit);
  }
  const Date start_day(std::chrono::floor<std::chrono::days>(*starts));
  plan.stock = stock_needs(planned, *paint, daily->stock, start_day);
  plan.room = room_report(planned, *paint, workshop.shop.spray);
  plan.cautions = cautions_for(plan.units, workshop.hazards);
  plan.warnings = warnings_for(planned, drafts.loads, *paint, plan);
  return plan;
}

}  // namespace dampward::workbench
