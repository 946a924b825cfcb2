#include <doctest/doctest.h>

#include "tests/referee/example.h"

// Work that is fixed is not judged, but what is not fixed keeps every rule towards it.

using namespace dampward::referee;

TEST_CASE("what is fixed may break every rule about itself") {
  Day day = example_day();
  day.placement("stocktaking") = {"stocktaking", -700, -690, {"tomo", "mara", "mara"}, "booth"};
  day.problem.fixed.clear();
  day.fix("stocktaking");
  INFO(day.told());
  CHECK(day.broken().empty());
}

TEST_CASE("two fixed works may have one person, a third may not join them") {
  Day day = example_day();
  day.place("sweep", 10, 25);
  day.fix("sweep");
  INFO(day.told());
  // 41-open begins in minute 20 with the same person.
  CHECK(day.broken() == Rules{"busy"});
  day.fix("41-open");
  CHECK(day.broken().empty());
}

TEST_CASE("a gap between two fixed works is not judged, one to a free work is") {
  Day day = example_day();
  day.gap("41-out").longest = 24;
  day.fix("41-coat");
  CHECK(day.broken() == Rules{"gap_long"});
  day.fix("41-out");
  CHECK(day.broken().empty());
}

TEST_CASE("a capacity overdrawn by fixed work alone is not judged") {
  Day day = example_day();
  day.problem.capacities.front().steps = {{0, 5}};
  day.fix("41-coat");
  CHECK(day.broken() == Rules{"capacity"});
  day.fix("42-coat");
  CHECK(day.broken().empty());
}

TEST_CASE("heat that a free unloading adds to a fixed bake is watched and powered like any other") {
  Day day = example_day();
  for (const char* id : {"41-in", "42-in", "L1-bake", "41-out"}) day.fix(id);
  Oven& cabinet = day.problem.ovens.front();
  cabinet.powered = {{140, 480}};
  INFO(day.told());
  CHECK(day.broken().empty());
  cabinet.powered = {{0, 149}};
  CHECK(day.broken() == Rules{"power"});
}

TEST_CASE("a bake's demand beyond its fixed part belongs to whoever unloads late") {
  Day day = example_day();
  for (const char* id : {"41-in", "42-in", "L1-bake", "41-out"}) day.fix(id);
  day.problem.capacities.push_back({"watts", {{140, 500}}});
  day.operation("L1-bake").demands = {{"watts", 500, 0}};
  CHECK(day.broken().empty());
  day.problem.capacities.back().steps = {{140, 500}, {149, 400}};
  CHECK(day.broken() == Rules{"capacity"});
  day.fix("42-out");
  CHECK(day.broken().empty());
}

TEST_CASE("a load with a fixed part is in the oven that the part names") {
  Day day = example_day();
  day.problem.loads.front().ovens = {"locker"};
  CHECK(day.broken() == Rules{"oven"});
  day.fix("41-in");
  INFO(day.told());
  CHECK(day.broken().empty());
}

TEST_CASE("what stays in the oven keeps it to the horizon") {
  Day day = example_day();
  for (const char* id : {"41-open", "41-in"}) day.fix(id);
  for (const char* id : {"41-out", "41-coat", "41-flash", "41-test", "41-recheck"}) day.forget(id);
  day.answer.unplaced.push_back({"TD-0041", "41-out", "shift", {}, "?"});
  day.answer.finish = 315;
  CHECK(day.broken() == Rules{"oven"});
  day.answer.oven_stays.front().to = day.problem.horizon;
  INFO(day.told());
  CHECK(day.broken().empty());
}

TEST_CASE("two loads in one oven clash unless both parts are fixed") {
  Day day = example_day();
  day.problem.units.push_back({"TD-0044", {}, 0, 1, {}});
  Operation in, out, bake;
  in.id = "44-in";
  out.id = "44-out";
  in.unit = out.unit = "TD-0044";
  in.skill = out.skill = bake.skill = "oven";
  bake.id = "L2-bake";
  bake.attendance = Attendance::watched;
  in.length = out.length = bake.length = 10;
  for (const Operation& each : {in, bake, out}) day.problem.operations.push_back(each);
  day.problem.loads.push_back({"L2", {"cabinet"}, "L2-bake", {}, {{"44-in", "44-out", 0, 0, 0, {}, {}}}});
  day.answer.placements.push_back({"44-in", 20, 30, {"tomo"}, {}});
  day.answer.placements.push_back({"L2-bake", 30, 40, {}, {}});
  day.answer.placements.push_back({"44-out", 40, 50, {"tomo"}, {}});
  day.answer.oven_stays.push_back({"L2", "cabinet", 20, 50});
  INFO(day.told());
  CHECK(day.broken().empty());

  // One minute late out of the oven: the next load comes in meanwhile.
  day.place("44-out", 41, 51);
  for (const char* id : {"44-in", "44-out"}) day.placement(id).people = {"mara"};
  day.placement("41-open").people = {"tomo"};
  day.person("tomo").skills.push_back("bench");
  day.answer.oven_stays.back().to = 51;
  CHECK(day.broken() == Rules{"oven"});
  for (const char* id : {"44-in", "L2-bake", "44-out", "41-in"}) day.fix(id);
  CHECK(day.broken().empty());
}
