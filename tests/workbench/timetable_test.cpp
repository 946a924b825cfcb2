#include <doctest/doctest.h>

#include <map>

#include "core/line/planner.h"
#include "core/moist_air/atmosphere.h"
#include "tests/line/checker.h"
#include "tests/workbench/demo_shop.h"
#include "workbench/detail/drafts.h"
#include "workbench/detail/shop_line.h"

namespace dampward::workbench::test {

TEST_CASE("the demo's timetable breaks no rule a slow checker knows") {
  const Workshop& workshop = demo_workshop();
  const HandedRecords records = demo_records();
  const moist_air::HumidAir air{Temperature::celsius(25), RelativeHumidity::percent(76)};
  RulingAir ruling{air.temperature,
                   air.humidity,
                   moist_air::dew_point(air),
                   Temperature::celsius(28),
                   air.temperature,
                   false,
                   ""};
  const PaintShop paint = paint_shop(workshop, {air.temperature, air.pressure}).value();
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
  const Drafts drafts = draft_all(baked, cold, {workshop, means, paint, air, ruling, cases});
  const line::Problem problem = shop_line(drafts.units, drafts.loads, workshop.shop, paint, from);
  const line::Answer answer = line::plan(problem).value();
  CHECK(answer.unplaced.empty());
  for (const std::string& violation : line::test::violations(problem, answer)) FAIL_CHECK(violation);
}

}  // namespace dampward::workbench::test
