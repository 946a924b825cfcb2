// Planning on from what happened, with the demo workshop.
#include <doctest/doctest.h>

#include <algorithm>
#include <map>

#include "core/base/format.h"
#include "tests/workbench/demo_shop.h"

using namespace dampward;
using namespace dampward::workbench;
using namespace dampward::workbench::test;

namespace {

// The demo shop with a log that grows.
struct Happening {
  HandedRecords records = demo_records();
  Plan before = plan_of(demo_workshop(), records);
  int noted = 0;

  history::Event& add(history::Kind kind, Instant at, const std::string& unit = "",
                      const std::string& step = "") {
    history::Event event;
    event.id = "e" + std::to_string(++noted);
    event.kind = kind;
    event.at = at;
    event.by = PersonId("lead");
    event.unit = UnitId(unit);
    event.step = step;
    event.place = {"log.jsonl", noted};
    records.events.push_back(event);
    return records.events.back();
  }

  // Everything as planned until then, each doing by who was to do it.
  void as_planned_until(Instant at) {
    for (const UnitPlan& unit : before.units) {
      for (const UnitStep& step : unit.steps) as_planned(unit, step, at);
    }
  }
  void as_planned(const UnitPlan& unit, const UnitStep& step, Instant at) {
    if (step.starts < at) {
      auto& event = add(history::Kind::step_started, step.starts, unit.unit.text, step.id);
      if (!step.people.empty()) event.person = step.people.front();
    }
    if (step.ends <= at) add(history::Kind::step_finished, step.ends, unit.unit.text, step.id);
  }

  Result<Plan> on(Instant at) const {
    PlanOptions options;
    options.at = at;
    options.effort = 0;  // the minutes below are of the first plan
    return make_plan(demo_workshop(), records, options);
  }
};

const UnitPlan& unit_in(const Plan& plan, const std::string& serial) {
  const auto found = std::find_if(plan.units.begin(), plan.units.end(),
                                  [&](const UnitPlan& u) { return u.unit.text == serial; });
  REQUIRE(found != plan.units.end());
  return *found;
}

const UnitStep& step_in(const UnitPlan& unit, const std::string& id) {
  const auto found =
      std::find_if(unit.steps.begin(), unit.steps.end(), [&](const UnitStep& s) { return s.id == id; });
  REQUIRE(found != unit.steps.end());
  return *found;
}

bool has_step(const UnitPlan& unit, const std::string& code) {
  return std::any_of(unit.steps.begin(), unit.steps.end(),
                     [&](const UnitStep& s) { return s.id.find(code) != std::string::npos; });
}

std::string problems_of(const Result<Plan>& plan) {
  std::string all;
  if (!plan.ok()) {
    for (const Problem& problem : plan.problems()) all += to_text(problem) + "\n";
  }
  return all;
}

Instant time(const char* text) {
  return *parse_instant(std::string(text) + "-04:00");
}

const char* const unit = "TD-0311";

}  // namespace

TEST_CASE("without a log, planning at the start of work moves nothing") {
  const Happening shop;
  const auto plan = shop.on(shop.before.from);
  REQUIRE(plan.ok());
  CHECK(plan->moved.empty());
  CHECK(plan->rework.empty());
  CHECK(plan->units.size() == shop.before.units.size());
}

TEST_CASE("what has begun stays to the minute, and nothing else begins before the time planned at") {
  for (const std::string at :
       {"2027-02-01T09:00", "2027-02-02T09:00", "2027-02-02T12:00", "2027-02-04T07:10"}) {
    Happening shop;
    const Instant now = time(at.c_str());
    shop.as_planned_until(now);
    const auto plan = shop.on(now);
    INFO(at, problems_of(plan));
    REQUIRE(plan.ok());
    CHECK(plan->units.size() == shop.before.units.size());
    for (const UnitPlan& was : shop.before.units) {
      const UnitPlan& is = unit_in(*plan, was.unit.text);
      for (const UnitStep& step : was.steps) {
        INFO(was.unit.text, " ", step.id);
        if (step.starts < now) {
          CHECK(step_in(is, step.id).starts == step.starts);
          if (step.ends <= now) CHECK(step_in(is, step.id).ends == step.ends);
        } else {
          CHECK(step_in(is, step.id).starts >= now);
        }
      }
    }
  }
}

TEST_CASE("every step at another time has its sentence, and no other step has one") {
  Happening shop;
  const Instant now = time("2027-02-02T08:00");
  shop.as_planned_until(now);
  auto& away = shop.add(history::Kind::person_absent, now);
  away.person = PersonId("painter");
  away.data["until_at"] = "2027-02-03T20:00:00-04:00";
  const auto plan = shop.on(now);
  REQUIRE(plan.ok());
  std::map<std::string, const MovedStep*> moved;
  for (const MovedStep& step : plan->moved) {
    CHECK(step.was != step.now);
    CHECK(step.why.ends_with("."));
    CHECK(step.why.size() > 20);
    moved[step.unit.text + step.step] = &step;
  }
  CHECK_FALSE(moved.empty());
  bool absence_told = false;
  for (const UnitPlan& was : shop.before.units) {
    const auto again = std::find_if(plan->units.begin(), plan->units.end(),
                                    [&](const UnitPlan& u) { return u.unit == was.unit; });
    if (again == plan->units.end()) continue;
    for (const UnitStep& step : was.steps) {
      const bool differs = step_in(*again, step.id).starts != step.starts;
      CHECK(moved.contains(was.unit.text + step.id) == differs);
    }
  }
  for (const auto& [key, step] : moved)
    absence_told = absence_told || step->why.find("painter") != std::string::npos;
  CHECK(absence_told);
  for (const UnitPlan& is : plan->units) {
    for (const UnitStep& step : is.steps) {
      if (step.starts < now || step.starts >= time("2027-02-03T20:00")) continue;
      CHECK(std::find(step.people.begin(), step.people.end(), PersonId("painter")) == step.people.end());
    }
  }
}

TEST_CASE("an event later than the time planned at is named") {
  Happening shop;
  shop.add(history::Kind::unit_received, time("2027-02-01T09:00"), unit);
  CHECK(problems_of(shop.on(time("2027-02-01T08:59"))).find("event e1") != std::string::npos);
  CHECK(shop.on(time("2027-02-01T09:00")).ok());
}

TEST_CASE("a step out of order or unknown to the route is named with its event") {
  Happening shop;
  shop.add(history::Kind::step_started, time("2027-02-01T09:00"), unit, "r1.coat1");
  CHECK(problems_of(shop.on(time("2027-02-01T10:00"))).find("event e1: r1.coat1 of TD-0311 began, but") !=
        std::string::npos);
  shop.records.events.clear();
  shop.add(history::Kind::step_started, time("2027-02-01T09:00"), unit, "r1.coat9");
  CHECK(problems_of(shop.on(time("2027-02-01T10:00"))).find("its route does not have") != std::string::npos);
}

TEST_CASE("a window missed before the first coat means drying again") {
  Happening shop;
  const Instant now = time("2027-02-02T10:30");
  shop.as_planned_until(now);
  shop.add(history::Kind::window_missed, now, unit);
  const auto plan = shop.on(now);
  INFO(problems_of(plan));
  REQUIRE(plan.ok());
  REQUIRE(plan->rework.size() == 1);
  const Rework& rework = plan->rework.front();
  REQUIRE(rework.ways.size() == 1);
  CHECK(rework.ways[0].way == "re_dry");
  CHECK(rework.ways[0].added > 3 * hour);
  CHECK(rework.ways[0].crew > 0 * minute);
  CHECK(rework.ways[0].lacquer.high.si() == 0);
  const UnitPlan& is = unit_in(*plan, unit);
  CHECK(step_in(is, "r1.load").starts >= now);
  CHECK(step_in(is, "r1.coat1").starts > step_in(is, "r1.unload").ends);
  CHECK(step_in(is, "r1.clean").ends < now);
  // Its mates of the same load keep their bake.
  CHECK(step_in(unit_in(*plan, "TD-0312"), "r1.bake").ends <= now);
}

TEST_CASE("a window missed after a coat never leads straight back into the oven") {
  Happening shop;
  const Instant now = time("2027-02-02T11:40");
  shop.as_planned_until(now);
  shop.add(history::Kind::window_missed, now, unit);
  const auto plan = shop.on(now);
  INFO(problems_of(plan));
  REQUIRE(plan.ok());
  REQUIRE(plan->rework.size() == 1);
  const Rework& rework = plan->rework.front();
  REQUIRE(rework.ways.size() == 2);
  CHECK(rework.ways[0].way == "let_dry_and_recoat");
  CHECK(rework.ways[1].way == "strip_and_re_dry");
  CHECK(rework.ways[1].lacquer.high > rework.ways[0].lacquer.high);
  CHECK(rework.ways[1].crew > rework.ways[0].crew);
  CHECK(rework.ways[rework.chosen].safe);
  const UnitPlan& is = unit_in(*plan, unit);
  if (rework.chosen == 0) {
    CHECK(has_step(is, "let_dry1"));
    CHECK(step_in(is, "r1.bake").ends <= now);
    CHECK(step_in(is, "r1.coat2").starts >= step_in(is, "r1.let_dry1").ends);
  } else {
    CHECK(step_in(is, "r1.load").starts >= step_in(is, "r1.stripped_free1").ends);
    CHECK(step_in(is, "r1.stripped_free1").starts >= step_in(is, "r1.strip_off1").ends);
  }

  // The same once more: what did not hold is not tried again, and the film comes off before any heat.
  shop.records.events.clear();
  shop.as_planned_until(now);
  shop.add(history::Kind::window_missed, now - std::chrono::minutes(1), unit);
  shop.add(history::Kind::window_missed, now, unit);
  const auto again = shop.on(now);
  INFO(problems_of(again));
  REQUIRE(again.ok());
  REQUIRE(again->rework.size() == 2);
  CHECK(again->rework[1].ways[again->rework[1].chosen].way == "strip_and_re_dry");
  const UnitPlan& stripped = unit_in(*again, unit);
  CHECK(step_in(stripped, "r1.load").starts >= step_in(stripped, "r1.stripped_free2").ends);
}

TEST_CASE("a failed retest is dried and tested again, then stripped") {
  Happening shop;
  const Instant now = time("2027-02-04T07:35");
  shop.as_planned_until(now);
  std::erase_if(shop.records.events, [&](const history::Event& event) {
    return event.unit.text == unit && event.step == "r1.retest" && event.kind == history::Kind::step_finished;
  });
  shop.add(history::Kind::retest_failed, now, unit, "r1.retest");
  const auto plan = shop.on(now);
  INFO(problems_of(plan));
  REQUIRE(plan.ok());
  REQUIRE(plan->rework.size() == 1);
  CHECK(plan->rework[0].ways[plan->rework[0].chosen].way == "let_dry_and_retest");
  const UnitPlan& is = unit_in(*plan, unit);
  CHECK(step_in(is, "r1.make_safe").starts >= now);
  CHECK(step_in(is, "r1.let_dry1").starts >= step_in(is, "r1.make_safe").ends);
  CHECK(step_in(is, "r1.retest").starts >= step_in(is, "r1.let_dry1").ends);
  CHECK(step_in(is, "r1.coat3").ends <= now);
}

TEST_CASE("a unit baked apart from its planned load keeps the bake it had") {
  Happening shop;
  const Instant now = time("2027-02-02T09:00");
  // TD-0318 was not in the oven with its mates.
  for (const UnitPlan& was : shop.before.units) {
    for (const UnitStep& step : was.steps) {
      if (was.unit.text == "TD-0318" && (step.id == "r1.load" || step.id == "r1.bake")) continue;
      shop.as_planned(was, step, now);
    }
  }
  const auto plan = shop.on(now);
  INFO(problems_of(plan));
  REQUIRE(plan.ok());
  CHECK(step_in(unit_in(*plan, "TD-0311"), "r1.bake").starts < now);
  CHECK(step_in(unit_in(*plan, "TD-0318"), "r1.bake").starts > now);
  CHECK(unit_in(*plan, "TD-0311").load != unit_in(*plan, "TD-0318").load);
}
