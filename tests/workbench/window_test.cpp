#include <doctest/doctest.h>

#include <algorithm>
#include <set>

#include "core/moist_air/humid_air.h"
#include "tests/workbench/demo_shop.h"
#include "workbench/detail/unit_window.h"

namespace dampward::workbench::test {
namespace {

using doctest::Approx;

// The demo's queue on a morning of one reading, without a weather file.
Plan plan_in(double celsius, double percent, Duration flash = {}) {
  Workshop workshop = demo_workshop();
  workshop.climate.reset();
  if (flash > Duration{}) {
    auto rows = workshop.lacquers.rows();
    for (materials::Lacquer& lacquer : rows) {
      for (materials::CoatRule& rule : lacquer.coats) rule.flash = Range<Duration>(flash);
    }
    workshop.lacquers = decltype(workshop.lacquers)(rows);
  }
  HandedRecords records = demo_records();
  records::AirReading reading = records.readings.back();
  reading.temperature = Temperature::celsius(celsius);
  reading.humidity = RelativeHumidity::percent(percent);
  records.readings = {reading};
  return plan_of(workshop, records);
}

const WindowRemedy& remedy(const Refusal& refusal, const std::string& way) {
  const auto found = std::find_if(refusal.remedies.begin(), refusal.remedies.end(),
                                  [&](const WindowRemedy& r) { return r.way == way; });
  REQUIRE(found != refusal.remedies.end());
  return *found;
}

std::vector<Refusal> without_window(const Plan& plan) {
  std::vector<Refusal> refused;
  for (const Refusal& refusal : plan.refused) {
    if (refusal.rule == Rule::warm_window) refused.push_back(refusal);
  }
  return refused;
}

bool says(const std::vector<std::string>& sentences, const std::string& words) {
  return std::any_of(sentences.begin(), sentences.end(),
                     [&](const std::string& s) { return s.find(words) != std::string::npos; });
}

}  // namespace

// 3 K over the dew point: ISO 8502-4 in a guide. At 32 °C that is 84 %: computed from Hyland and Wexler.
TEST_CASE("in 32 °C air of 84 % damp going back ends every window, and at 85 % there is none") {
  const Plan drier = plan_in(32, 84);
  REQUIRE_FALSE(drier.windows.empty());
  for (const Window& window : drier.windows) {
    CHECK(window.closed_by.find("never runs out") != std::string::npos);
    CHECK(window.closed_by.find("damp") != std::string::npos);
  }
  const Plan damper = plan_in(32, 85);
  CHECK(damper.windows.empty());
  CHECK(without_window(damper).size() > 10);
}

TEST_CASE("a unit without a window gets no plan but every remedy with its times, those that help first") {
  const Plan plan = plan_in(32, 85);
  for (const Refusal& refusal : without_window(plan)) {
    bool still_helps = true;
    for (const WindowRemedy& each : refusal.remedies) {
      CHECK_FALSE(each.words.empty());
      CHECK((still_helps || !each.opens));
      still_helps = each.opens;
      CHECK(each.opens == each.first_coat_after.has_value());
      CHECK(each.opens == !each.occupies.empty());
    }
    CHECK(remedy(refusal, "dried_air").opens);
    CHECK(remedy(refusal, "dried_air").words.find("84 %") != std::string::npos);
    CHECK(refusal.settle.find("84 %") != std::string::npos);
  }
}

TEST_CASE("a room hotter than the lacquer allows is told to be cooled, and nothing else helps") {
  const std::vector<Refusal> refused = without_window(plan_in(39, 60));
  REQUIRE_FALSE(refused.empty());
  for (const Refusal& refusal : refused) {
    for (const WindowRemedy& each : refusal.remedies) CHECK(each.opens == (each.way == "cooler_place"));
    CHECK(refusal.settle.find("no hotter than") != std::string::npos);
  }
}

TEST_CASE("doing what a remedy says opens the window it promises") {
  const std::vector<Refusal> refused = without_window(plan_in(39, 80));
  REQUIRE_FALSE(refused.empty());
  CHECK(refused.front().settle.find("37 °C and has 84 %") != std::string::npos);
  CHECK(without_window(plan_in(37, 84)).size() < refused.size());
  CHECK(without_window(plan_in(37, 86)).size() == refused.size());
}

TEST_CASE("a load that finds a window only when the oven is stepped down is held, and keeps the oven busy") {
  const Plan plan = plan_in(32, 85, 4 * minute);
  std::set<std::string> held;
  for (const Load& load : plan.loads) {
    if (!load.step_down) continue;
    for (const UnitId& unit : load.units) held.insert(unit.text);
    CHECK(load.step_down->to < Temperature::celsius(38));
    CHECK(load.step_down->takes > 30 * minute);
    const auto inside = std::chrono::duration<double>(load.first_out - load.starts).count() * second;
    CHECK(inside >= load.warm_up + load.hold + load.step_down->takes - minute);
    const auto waits = std::chrono::duration<double>(load.last_out - load.first_out).count() * second;
    CHECK(waits <= load.step_down->at_most);
    CHECK(says(plan.warnings, load.id + ": after the bake step the"));
  }
  REQUIRE_FALSE(held.empty());
  for (const Window& window : plan.windows) {
    if (!held.contains(window.unit.text)) continue;
    CHECK(window.opens_after == Duration{});
    CHECK(window.closes_after < 30 * minute);
  }
}

TEST_CASE("thin cotton takes its damp back within minutes whatever the hurry, and gates nothing") {
  const Plan plan = plan_of(demo_workshop(), demo_records());
  int thin = 0;
  for (const Window& window : plan.windows) {
    for (const DampBackIn& part : window.damp_back) {
      ++thin;
      CHECK_FALSE(part.gates);
      CHECK(part.share <= 1);
      CHECK(part.share > 0.5);
      CHECK(part.tenth_back < 10 * minute);
      CHECK(part.words.find("first, or in dried air") != std::string::npos);
    }
  }
  CHECK(thin > 0);
  CHECK(says(plan.warnings, "Damp goes back within minutes"));
}

TEST_CASE("a slow part gates the window, and damper air or a longer wait in the oven shortens it") {
  const Workshop& workshop = demo_workshop();
  const equipment::Kind& kind = *workshop.kinds.find(KindId("river_radio"));
  const drying::DryingBody slow = [] {
    materials::MoistureDiffusion laminate;
    laminate.diffusivity = {Diffusivity::si(1.5e-12), Mark::estimate, "test", ""};
    laminate.at = Temperature::celsius(30);
    laminate.activation_energy = {Range<MolarEnergy>(43 * kilojoule_per_mole), Mark::estimate, "test", ""};
    return drying::DryingBody{
        drying::Shape::plate, 0.8 * millimetre, laminate, materials::Isotherm::paper, {}, 1, {}};
  }();
  KindCase known;
  known.kind = &kind;
  known.piece.kind = kind.id;
  drying::OvenPart board;
  board.id = PartId("board");
  board.body = slow;
  known.piece.parts = {board};
  LoadDraft load;
  load.bake.set = Temperature::celsius(60);
  drying::PartBake baked;
  baked.kind = kind.id;
  baked.part = board.id;
  baked.name = "terminal board";
  baked.moisture = drying::Sorption{MoistureContent::percent(10), MoistureContent::percent(2),
                                    MoistureContent::percent(3)};
  load.bake.parts = {baked};
  load.bake.pieces = {{kind.id, 1, {}, {}, 15 * minute, 15 * minute}};
  materials::Lacquer lacquer = *workshop.lacquers.find(workshop.shop.lacquer);
  PaintShop paint;
  paint.lacquer = &lacquer;
  CoatCase coat;
  coat.work = {1, 5 * minute, 20 * minute};
  const auto window_in = [&](double percent, const LoadDraft& from) {
    RulingAir air;
    air.temperature = air.warmest = air.coolest = Temperature::celsius(30);
    air.humidity = RelativeHumidity::percent(percent);
    air.dew_point = moist_air::dew_point({air.temperature, air.humidity});
    return window_case(known, &from, coat, paint, air).window();
  };
  const coating::WarmWindow drier = window_in(70, load), damper = window_in(80, load);
  CHECK(drier.closed == coating::Closes::damp_back);
  CHECK(drier.closed_by == "terminal board");
  CHECK(*damper.closes < *drier.closes);
  LoadDraft held = load;
  held.held =
      LoadDraft::Held{{Temperature::celsius(34), hour, Temperature::celsius(33),
                       moist_air::vapour_pressure({Temperature::celsius(30), RelativeHumidity::percent(70)}),
                       RelativeHumidity::percent(59)},
                      20 * minute};
  CHECK(*window_in(70, held).closes < *drier.closes);
}

}  // namespace dampward::workbench::test
