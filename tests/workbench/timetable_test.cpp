#include <doctest/doctest.h>

#include <algorithm>
#include <functional>
#include <map>

#include "core/line/planner.h"
#include "core/moist_air/atmosphere.h"
#include "tests/line/checker.h"
#include "tests/workbench/demo_shop.h"
#include "workbench/detail/drafts.h"
#include "workbench/detail/shop_line.h"

namespace dampward::workbench::test {
namespace {

// The timetable problem of the demo's queue in a workshop much like the demo, with its lacquer as changed.
line::Problem problem_of(const Workshop& workshop, const std::function<void(PaintShop&)>& change) {
  const HandedRecords records = demo_records();
  const moist_air::HumidAir air{Temperature::celsius(25), RelativeHumidity::percent(76)};
  RulingAir ruling{air.temperature,
                   air.humidity,
                   moist_air::dew_point(air),
                   Temperature::celsius(28),
                   air.temperature,
                   false,
                   ""};
  PaintShop paint = paint_shop(workshop, {air.temperature, air.pressure}).value();
  change(paint);
  const route::Means means{workshop.shop,
                           *paint.lacquer,
                           paint.thinner,
                           workshop.cleaners.rows(),
                           workshop.materials.rows(),
                           workshop.solvents.rows(),
                           workshop.hazards};
  const Instant from = workshop.shop.site.clock.instant(*records.units.starts);
  const WatchedStretches watched = watched_stretches(workshop.shop, from);
  std::map<KindId, KindCase> cases;
  QueuedUnits baked, cold;
  for (const auto& unit : records.units.units) {
    if (!cases.contains(unit.kind)) {
      cases.emplace(unit.kind, kind_case(*workshop.kinds.find(unit.kind), workshop, means, air, watched));
    }
    const KindCase& known = cases.at(unit.kind);
    if (!known.refused) (known.cold ? cold : baked).push_back(&unit);
  }
  const std::function<void(const std::string&)> silent = [](const std::string&) {};
  const Drafts drafts = draft_all(baked, cold, {workshop, means, paint, air, ruling, cases, silent});
  return shop_line(drafts.units, drafts.loads, workshop.shop, paint, from);
}

}  // namespace

TEST_CASE("the demo's timetable breaks no rule a slow checker knows") {
  const line::Problem problem = problem_of(demo_workshop(), [](PaintShop&) {});
  const line::Answer answer = line::plan(problem).value();
  CHECK(answer.unplaced.empty());
  for (const std::string& violation : line::test::violations(problem, answer)) FAIL_CHECK(violation);
}

TEST_CASE(
    "where no part of the lacquer burns, an oven beside the cleaning bench is still kept from the cleaner's "
    "vapour") {
  Workshop workshop = demo_workshop();
  for (auto& oven : workshop.shop.ovens) oven.room = workshop.shop.spray.room;
  const line::Problem problem = problem_of(workshop, [](PaintShop& paint) {
    paint.vapour.reset();
    paint.capacity.reset();
  });
  for (const line::Oven& oven : problem.ovens) CHECK_MESSAGE(oven.near_solvent, oven.id);
  CHECK(std::any_of(problem.operations.begin(), problem.operations.end(),
                    [](const line::Operation& op) { return op.solvent; }));
  for (const line::Operation& op : problem.operations) {
    if (op.solvent) CHECK_MESSAGE(op.clears > 0, op.id);
  }
}

}  // namespace dampward::workbench::test
