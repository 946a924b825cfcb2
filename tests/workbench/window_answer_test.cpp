#include "workbench/window_answer.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <cmath>

#include "tests/workbench/demo_shop.h"

namespace dampward::workbench::test {
namespace {

using doctest::Approx;

SurfaceQuestion one_shell(double celsius, double percent) {
  SurfaceQuestion question;
  question.surfaces = {{"shell", Temperature::celsius(60), 12 * minute}};
  question.one_coat = 8 * minute;
  question.air = {Temperature::celsius(celsius), RelativeHumidity::percent(percent)};
  return question;
}

WindowAnswer answer_to(const SurfaceQuestion& question) {
  Workshop tables = files::shipped_workshop();
  tables.shop.lacquer = LacquerId("phenolic_tung_varnish_fungicidal");
  return window_answer(tables, question).value();
}

const UnitWindow& only(const WindowAnswer& answer) {
  REQUIRE(answer.windows.size() == 1);
  return answer.windows.front();
}

}  // namespace

TEST_CASE("the windows of the demo's queue are those of its plan") {
  const HandedRecords records = demo_records();
  const WindowAnswer answer = window_answer(demo_workshop(), records, {}).value();
  const Plan plan = plan_of(demo_workshop(), records);
  CHECK(answer.windows.size() == plan.units.size() + plan.refused.size());
  REQUIRE_FALSE(plan.windows.empty());
  for (const Window& window : plan.windows) {
    const auto told = std::find_if(answer.windows.begin(), answer.windows.end(),
                                   [&](const UnitWindow& w) { return w.what == window.unit.text; });
    REQUIRE(told != answer.windows.end());
    CHECK(told->opens == window.opens_after);
    CHECK(told->closes == window.closes_after);
    CHECK(told->closed_by == window.closed_by);
    // Every coat and flash fits in behind the first coat as planned.
    REQUIRE(told->latest_start.has_value());
    const auto waits = std::chrono::duration<double>(window.first_coat - window.leaves_oven).count();
    CHECK(waits <= told->latest_start->in(second) + 60);
  }
}

TEST_CASE("a shell cools into its window when Newton says") {
  // T = Ta + (T0 − Ta) exp(−t/τ): from 60 to 38 °C in 30 °C air after τ ln(30/8) = 15.86 min. NAVAIR 01-1A-509-3 coats below 38 °C
  // (read); dew point at 30 °C and 70 % is 23.9 °C (Magnus 1844, from memory), so the margin of 3 K never runs out.
  const WindowAnswer answer = answer_to(one_shell(30, 70));
  const UnitWindow& window = only(answer);
  CHECK(answer.hottest.celsius() == Approx(38));
  CHECK(answer.dew_point.celsius() == Approx(23.9).epsilon(0.005));
  CHECK(answer.floor.celsius() == Approx(26.9).epsilon(0.005));
  REQUIRE(window.usable);
  CHECK(window.opens->in(minute) == Approx(12 * std::log(30.0 / 8)).epsilon(1e-3));
  CHECK(window.closed_by.find("never runs out") != std::string::npos);
}

TEST_CASE("a light shell and heavy iron share no window in air near its dew point, and drier air gives one") {
  SurfaceQuestion question = one_shell(30, 88);
  question.surfaces.push_back({"iron", Temperature::celsius(68), 60 * minute});
  const UnitWindow window = only(answer_to(question));
  CHECK_FALSE(window.usable);
  CHECK_FALSE(window.reason.empty());
  REQUIRE(window.dry_enough.has_value());
  question.air.humidity = *window.dry_enough;
  CHECK(only(answer_to(question)).usable);
  question.air.humidity = RelativeHumidity::percent(window.dry_enough->percent() + 1);
  CHECK_FALSE(only(answer_to(question)).usable);
}

TEST_CASE("the air asked for rules, whatever the folder's readings and weather say") {
  const HandedRecords records = demo_records();
  WindowQuestion question;
  question.unit = UnitId("TD-0107");
  question.air = WindowQuestion::Air{Temperature::celsius(32), RelativeHumidity::percent(85)};
  const WindowAnswer damp = window_answer(demo_workshop(), records, question).value();
  CHECK(damp.air.temperature.celsius() == Approx(32));
  CHECK(damp.air.humidity.percent() == Approx(85));
  CHECK_FALSE(only(damp).usable);
  CHECK_FALSE(only(damp).remedies.empty());
}

TEST_CASE("damper air never widens a window, and a slower brush never gives more time to begin") {
  CHECK(rc::check([] {
    const double percent = *rc::gen::inRange(40, 95);
    const UnitWindow drier = only(answer_to(one_shell(30, percent)));
    const UnitWindow damper = only(answer_to(one_shell(30, percent + 4)));
    RC_ASSERT(drier.usable || !damper.usable);
    if (damper.usable && damper.closes) RC_ASSERT(*damper.closes <= *drier.closes + 1 * second);
    SurfaceQuestion slow = one_shell(30, percent);
    slow.one_coat = 16 * minute;
    const UnitWindow slower = only(answer_to(slow));
    if (slower.usable) RC_ASSERT(*slower.latest_start <= *drier.latest_start);
  }));
}

}  // namespace dampward::workbench::test
