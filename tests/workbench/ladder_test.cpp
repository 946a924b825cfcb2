#include "workbench/ladder.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "adapters/files/what_if.h"
#include "tests/workbench/demo_shop.h"

namespace dampward::workbench::test {
namespace {

const std::filesystem::path demo = std::filesystem::path(DAMPWARD_SOURCE_DIR) / "data/demo";

// The demo with changes, some of them from the start and some on top.
Result<Workshop> changed_demo(const std::vector<std::string>& texts) {
  std::vector<files::Change> changes;
  for (const std::string& text : texts) {
    const auto more = files::changes_from_text(std::vector<std::string>{text}).value();
    changes.insert(changes.end(), more.begin(), more.end());
  }
  auto changed = files::read_changed_workshop(demo, changes, demo_workshop());
  if (!changed) return changed.problems();
  return std::move(changed).value().workshop;
}
Workshop demo_with(const std::vector<std::string>& texts) {
  return changed_demo(texts).value();
}

// A few of the demo's units: baked, cold, and the one whose part nobody knows.
HandedRecords few_records() {
  HandedRecords records = demo_records();
  std::erase_if(records.units.units, [](const records::QueuedUnit& unit) {
    return unit.serial.text != "TD-0311" && unit.serial.text != "TD-0107" && unit.serial.text != "TD-0801";
  });
  return records;
}

struct Laddered {
  Plan plan;
  int tries = 0;
};

Laddered laddered(const std::string& spoilt, const LadderLimits& limits = {}) {
  Laddered result;
  const Workshop workshop = demo_with({spoilt});
  result.plan = plan_of(workshop, few_records());
  const WorkshopWith with = [&](const std::string& change) -> Result<Workshop> {
    ++result.tries;
    return changed_demo({spoilt, change});
  };
  add_ladders(result.plan, workshop, few_records(), {}, with, limits);
  return result;
}

const Refusal& refusal_of(const Plan& plan, const std::string& unit) {
  const auto found = std::find_if(plan.refused.begin(), plan.refused.end(),
                                  [&](const auto& r) { return r.unit.text == unit; });
  REQUIRE(found != plan.refused.end());
  return *found;
}

bool treats(const Plan& plan, const UnitId& unit) {
  return std::any_of(plan.units.begin(), plan.units.end(), [&](const auto& u) { return u.unit == unit; });
}

}  // namespace

TEST_CASE("every rung of a ladder lets its unit in when the shop is changed so, and the rungs rise in cost") {
  for (const char* spoilt : {"spray.fan=30 m3/min", "crew.lead=ill; crew.technician=ill", "spray.ways_out=0",
                             "lacquers.delta_varnish.dew_margin=5 K", "spray.heat.1.distance=2 m"}) {
    const Plan plan = laddered(spoilt).plan;
    REQUIRE_FALSE(plan.refused.empty());
    for (const Refusal& refusal : plan.refused) {
      double below = 0;
      for (const Rung& rung : refusal.ladder) {
        INFO(spoilt, " / ", refusal.unit.text, " / ", rung.change);
        CHECK(rung.cost >= below);
        below = rung.cost;
        const Plan changed = plan_of(demo_with({spoilt, rung.change}), few_records());
        CHECK(treats(changed, refusal.unit));
        for (const UnitId& lost : rung.loses) CHECK_FALSE(treats(changed, lost));
      }
    }
  }
}

TEST_CASE("a thing that is hot too near is moved, a door is made, a fan is turned up") {
  struct Row {
    const char *spoilt, *opened_by;
  };
  for (const Row& row : {Row{"spray.heat.1.distance=2 m", "spray.heat.1.distance=\"7 m\""},
                         Row{"spray.ways_out=0", "spray.ways_out=2"}}) {
    const Plan plan = laddered(row.spoilt).plan;
    INFO(row.spoilt);
    const Refusal& refusal = refusal_of(plan, "TD-0311");
    REQUIRE_FALSE(refusal.ladder.empty());
    CHECK(refusal.ladder.front().change == row.opened_by);
  }
  const Refusal fan = refusal_of(laddered("spray.fan=30 m3/min").plan, "TD-0107");
  CHECK(std::any_of(fan.ladder.begin(), fan.ladder.end(),
                    [](const Rung& rung) { return rung.change.find("spray.fan") != std::string::npos; }));
}

TEST_CASE("a limit nobody knows is settled by measuring, and the ladder says what would be enough") {
  const Refusal refusal = refusal_of(laddered("site.name=x").plan, "TD-0801");
  REQUIRE(refusal.ladder.size() == 1);
  CHECK(refusal.ladder[0].words.find("45 °C") != std::string::npos);
  CHECK(refusal.ladder[0].with_whole_queue);
}

TEST_CASE("where one change brings the next barrier to light, another is put on top of it") {
  const Refusal refusal = refusal_of(laddered("spray.ways_out=0").plan, "TD-0801");
  REQUIRE_FALSE(refusal.ladder.empty());
  CHECK(refusal.ladder[0].change.find("filter_block.limit") != std::string::npos);
  CHECK(refusal.ladder[0].change.find("spray.ways_out=2") != std::string::npos);
}

TEST_CASE("the shop's own costs set the order") {
  const std::string spoilt = "spray.fan=30 m3/min";
  const Rung usual = refusal_of(laddered(spoilt).plan, "TD-0107").ladder.at(0);
  CHECK(usual.change.find("spray.fan") == std::string::npos);
  CHECK(usual.estimated);
  const Rung cheap_fan = refusal_of(laddered(spoilt + "; costs.fan=0.001").plan, "TD-0107").ladder.at(0);
  CHECK(cheap_fan.change.find("spray.fan") != std::string::npos);
  CHECK_FALSE(cheap_fan.estimated);
}

TEST_CASE("only a licensed hand opens what is isolated, so no ladder leads there") {
  Plan plan = plan_of(demo_workshop(), few_records());
  plan.refused.front().rule = Rule::isolation;
  const WorkshopWith nobody = [](const std::string&) -> Result<Workshop> {
    FAIL("nothing is tried");
    return demo_workshop();
  };
  add_ladders(plan, demo_workshop(), few_records(), {}, nobody);
  CHECK(plan.refused.front().ladder.empty());
  CHECK_FALSE(plan.refused.front().ladder_reason.empty());
}

TEST_CASE("trying keeps to its bounds, and every refusal has a ladder or says why not") {
  for (const std::size_t plans : {std::size_t{0}, std::size_t{1}, std::size_t{5}}) {
    LadderLimits limits;
    limits.alone = plans;
    const Laddered result = laddered("crew.assistant=ill; crew.painter=ill", limits);
    INFO(plans);
    CHECK(result.tries <= static_cast<int>(plans + limits.whole));
    for (const Refusal& refusal : result.plan.refused)
      CHECK(refusal.ladder.empty() != refusal.ladder_reason.empty());
  }
}

TEST_CASE("of a long queue each change is tried with the refused unit alone, and the rung says so") {
  LadderLimits limits;
  limits.whole_queue = 2;
  const Refusal refusal = refusal_of(laddered("site.name=x", limits).plan, "TD-0801");
  REQUIRE_FALSE(refusal.ladder.empty());
  CHECK_FALSE(refusal.ladder[0].with_whole_queue);
}

TEST_CASE("dried air never narrows a window") {
  const Plan damp = plan_of(demo_workshop(), few_records());
  const Plan dry = plan_of(demo_with({"spray.dried_to=40 %"}), few_records());
  CHECK_FALSE(damp.windows.empty());
  CHECK(dry.units.size() >= damp.units.size());
  for (const Window& window : damp.windows) {
    const auto again = std::find_if(dry.windows.begin(), dry.windows.end(),
                                    [&](const Window& other) { return other.unit == window.unit; });
    REQUIRE(again != dry.windows.end());
    CHECK(again->closes_after.si() >= window.closes_after.si());
  }
}

}  // namespace dampward::workbench::test
