#include <doctest/doctest.h>

#include <functional>

#include "tests/referee/example.h"

// One fault at a time is planted into a day that keeps every rule, and is caught by its name alone.

namespace {

void planted(const std::string& rule, const std::string& what, const std::function<void(Day&)>& spoil) {
  Day day = example_day();
  spoil(day);
  INFO(what << "\n" << day.told());
  CHECK(day.broken() == Rules{rule});
  for (const auto& violation : dampward::referee::judge(day.problem, day.answer))
    CHECK_FALSE(violation.sentence.empty());
}

}  // namespace

TEST_CASE("a day written by hand that keeps every rule has no violation") {
  const Day day = example_day();
  INFO(day.told());
  CHECK(day.broken().empty());
}

TEST_CASE("a name that the problem does not have is caught") {
  planted("unknown", "person", [](Day& day) { day.placement("sweep").people = {"nobody"}; });
  planted("unknown", "operation",
          [](Day& day) { day.answer.placements.push_back({"dance", 20, 30, {}, {}}); });
  planted("unknown", "station", [](Day& day) { day.placement("41-test").station = "roof"; });
  planted("unknown", "oven", [](Day& day) {
    day.answer.oven_stays.front().oven = "kiln";
    day.placement("41-in").station.reset();
    day.placement("L1-bake").station.reset();
  });
  planted("unknown", "load", [](Day& day) { day.answer.oven_stays.push_back({"L9", "locker", 0, 10}); });
  planted("unknown", "late unit", [](Day& day) { day.answer.late.push_back({"TD-9", 1, 2}); });
  planted("unknown", "unplaced unit",
          [](Day& day) { day.answer.unplaced.push_back({"TD-9", "43-rewind", "skill", {}, "?"}); });
  planted("unknown", "unplaced operation",
          [](Day& day) { day.answer.unplaced.front().operation = "44-rewind"; });
}

TEST_CASE("what is placed twice is caught") {
  planted("twice", "operation",
          [](Day& day) { day.answer.placements.push_back({"sweep", 320, 335, {"tomo"}, {}}); });
  planted("twice", "stay", [](Day& day) { day.answer.oven_stays.push_back({"L1", "locker", 50, 150}); });
}

TEST_CASE("a unit done by half is caught, and a bake that bakes nothing or is missing") {
  planted("whole", "half a unit", [](Day& day) {
    day.forget("41-recheck");
    day.answer.unplaced.push_back({"TD-0041", "41-recheck", "horizon", {}, "?"});
    day.answer.finish = 315;
  });
  planted("whole", "no bake", [](Day& day) {
    day.forget("L1-bake");
    day.problem.capacities.clear();
  });
  planted("whole", "only a bake", [](Day& day) {
    for (const char* id : {"41-open", "41-in", "41-out", "41-coat", "41-flash", "41-test", "41-recheck",
                           "42-in", "42-out", "42-coat", "42-test"})
      day.forget(id);
    day.answer.unplaced.push_back({"TD-0041", "41-open", "shift", {}, "?"});
    day.answer.unplaced.push_back({"TD-0042", "42-in", "shift", {}, "?"});
    day.answer.oven_stays = {{"L1", "cabinet", 70, 130}};
    day.answer.late.clear();
    day.answer.finish = 315;
  });
}

TEST_CASE("what is neither placed nor told is caught, and what is both") {
  planted("untold", "neither", [](Day& day) { day.answer.unplaced.clear(); });
  planted("untold", "both",
          [](Day& day) { day.answer.unplaced.push_back({"TD-0041", "41-open", "shift", {}, "?"}); });
  planted("untold", "told twice",
          [](Day& day) { day.answer.unplaced.push_back(day.answer.unplaced.front()); });
  planted("untold", "an operation of no unit", [](Day& day) { day.forget("sweep"); });
  planted("untold", "an operation of no unit, both",
          [](Day& day) { day.answer.unplaced.push_back({{}, "sweep", "shift", {}, "?"}); });
  planted("untold", "an operation of a unit by itself",
          [](Day& day) { day.answer.unplaced.push_back({{}, "43-rewind", "skill", {}, "?"}); });
}

TEST_CASE("a length that does not fit is caught, with pauses counted") {
  planted("length", "short", [](Day& day) { day.place("sweep", 300, 314); });
  planted("length", "long", [](Day& day) { day.place("sweep", 300, 316); });
  planted("length", "backwards", [](Day& day) { day.place("sweep", 315, 300); });
  planted("length", "pause not counted", [](Day& day) {
    day.place("42-test", 235, 284);
    day.answer.late.front().finish = 284;
  });
  planted("length", "ends in a pause", [](Day& day) {
    day.operation("42-test").length = 5;
    day.place("42-test", 235, 250);
    day.answer.late.clear();
  });
  planted("length", "bake", [](Day& day) {
    day.problem.loads.front().members.front().needs = 59;
    day.place("L1-bake", 71, 130);
  });
}

TEST_CASE("work outside the horizon or before now is caught") {
  planted("outside", "after the horizon", [](Day& day) { day.problem.horizon = 469; });
  planted("past", "before now", [](Day& day) { day.problem.now = 21; });
  planted("outside", "before minute 0", [](Day& day) {
    day.problem.now = -100;
    day.problem.people.front().shifts = {{-100, 480}};
    day.place("sweep", -20, -5);
  });
}

TEST_CASE("fixed work that is moved or missing is caught") {
  planted("fixed", "moved", [](Day& day) { day.place("stocktaking", -1, 19); });
  planted("fixed", "other people", [](Day& day) { day.placement("stocktaking").people = {"tomo"}; });
  planted("fixed", "another place", [](Day& day) { day.placement("stocktaking").station = "bench"; });
  planted("fixed", "missing", [](Day& day) {
    day.forget("stocktaking");
    day.answer.unplaced.push_back({{}, "stocktaking", "stopped", {}, "?"});
  });
}

TEST_CASE("a gap that is too short or too long is caught by one minute") {
  planted("gap_short", "short", [](Day& day) { day.gap("41-out").shortest = 26; });
  planted("gap_long", "long", [](Day& day) { day.gap("41-out").longest = 24; });
}

TEST_CASE("wrong people are caught: their number, their skill, their other work") {
  planted("people", "too many", [](Day& day) { day.placement("sweep").people = {"mara", "tomo"}; });
  planted("people", "too few", [](Day& day) { day.placement("sweep").people.clear(); });
  planted("people", "one twice", [](Day& day) {
    day.operation("sweep").people = 2;
    day.placement("sweep").people = {"mara", "mara"};
  });
  planted("people", "hands where none are needed",
          [](Day& day) { day.placement("L1-bake").people = {"mara"}; });
  planted("skill", "skill", [](Day& day) { day.operation("sweep").skill = "winding"; });
  planted("busy", "two things at once", [](Day& day) {
    day.place("sweep", 465, 480);
    day.answer.finish = 480;
  });
}

TEST_CASE("work outside a shift or in a break is caught") {
  planted("shift", "after it", [](Day& day) {
    day.place("sweep", 466, 481);
    day.placement("sweep").people = {"tomo"};
    day.answer.finish = 481;
  });
  planted("break", "into it", [](Day& day) {
    day.place("sweep", 226, 241);
    day.placement("sweep").people = {"tomo"};
  });
  planted("break", "starting in it", [](Day& day) {
    day.place("42-test", 269, 290);
    day.answer.late.front().finish = 290;
  });
}

TEST_CASE("an oven that nobody watches or that has no power is caught, unloading counted") {
  planted("watch", "bake", [](Day& day) { day.operation("L1-bake").skill = "winding"; });
  planted("watch", "other work", [](Day& day) {
    day.operation("41-flash").attendance = dampward::referee::Attendance::watched;
    day.operation("41-flash").skill = "winding";
  });
  planted("power", "cut before the last is out",
          [](Day& day) { day.problem.ovens.front().powered = {{0, 149}}; });
  planted("power", "cut in between",
          [](Day& day) { day.problem.ovens.front().powered = {{0, 100}, {101, 480}}; });
}

TEST_CASE("a wrong place is caught, and one too full") {
  planted("station", "none needed", [](Day& day) { day.placement("sweep").station = "bench"; });
  planted("station", "none told", [](Day& day) { day.placement("41-test").station.reset(); });
  planted("station", "wrong one", [](Day& day) { day.placement("41-open").station = "booth"; });
  planted("station", "another oven", [](Day& day) { day.placement("41-in").station = "locker"; });
  planted("crowded", "two at one bench", [](Day& day) {
    day.operation("sweep").station_skill = "bench";
    day.placement("sweep") = {"sweep", 220, 235, {"tomo"}, "bench"};
  });
}

TEST_CASE("a load in the wrong oven or with a wrong stay is caught") {
  planted("oven", "not allowed", [](Day& day) { day.problem.loads.front().ovens = {"locker"}; });
  planted("oven", "no stay", [](Day& day) { day.answer.oven_stays.clear(); });
  planted("oven", "early", [](Day& day) { day.answer.oven_stays.front().from = 60; });
  planted("oven", "short", [](Day& day) { day.answer.oven_stays.front().to = 140; });
  planted("oven", "a load that is not there", [](Day& day) {
    day.problem.loads.push_back({"L2", {"locker"}, "L2-bake", {}, {}});
    day.answer.oven_stays.push_back({"L2", "locker", 10, 20});
  });
}

TEST_CASE("a load out of order is caught") {
  planted("load_order", "loading after the start", [](Day& day) { day.place("L1-bake", 69, 129); });
  planted("load_order", "unloading before the end", [](Day& day) { day.place("L1-bake", 71, 131); });
}

TEST_CASE("a load too large, too heavy, too hot or too short for a member is caught") {
  planted("load_size", "volume", [](Day& day) { day.problem.ovens.front().volume_l = 39; });
  planted("load_size", "mass", [](Day& day) { day.problem.ovens.front().mass_kg = 16.9; });
  planted("load_setting", "too hot",
          [](Day& day) { day.problem.loads.front().members.front().hottest_c = 59.9; });
  planted("load_setting", "too cold",
          [](Day& day) { day.problem.loads.front().members.front().coldest_c = 60.1; });
  planted("load_time", "too short", [](Day& day) { day.problem.loads.front().members.front().needs = 61; });
}

TEST_CASE("a thousandth of a litre too much is no fault") {
  Day day = example_day();
  day.problem.ovens.front().volume_l = 39.9995;
  CHECK(day.broken().empty());
}

TEST_CASE("more taken than there is is caught, tails and a falling capacity counted") {
  planted("capacity", "too little", [](Day& day) { day.problem.capacities.front().steps = {{0, 5}}; });
  planted("capacity", "before there is any",
          [](Day& day) { day.problem.capacities.front().steps = {{166, 10}}; });
  planted("capacity", "falling under the tail",
          [](Day& day) { day.problem.capacities.front().steps = {{0, 10}, {229, 5}}; });
  planted("capacity", "a bake takes until the last unloading", [](Day& day) {
    day.problem.capacities.push_back({"watts", {{0, 500}, {149, 0}}});
    day.operation("L1-bake").demands = {{"watts", 500, 0}};
  });
}

TEST_CASE("solvent beside an oven that is hot or cooling is caught by one minute") {
  planted("solvent", "cooling", [](Day& day) { day.problem.ovens.front().cools = 16; });
  planted("solvent", "clearing", [](Day& day) {
    day.operation("sweep").solvent = true;
    day.operation("sweep").clears = 21;
    day.place("sweep", 35, 50);
    day.placement("sweep").people = {"tomo"};
  });
}

TEST_CASE("lateness that is not told, or told wrongly, is caught, and a wrong end") {
  planted("late", "not told", [](Day& day) { day.answer.late.clear(); });
  planted("late", "wrong figure", [](Day& day) { day.answer.late.front().finish = 286; });
  planted("late", "not late", [](Day& day) { day.answer.late.push_back({"TD-0041", 240, 235}); });
  planted("late", "twice", [](Day& day) { day.answer.late.push_back(day.answer.late.front()); });
  planted("finish", "wrong", [](Day& day) { day.answer.finish = 471; });
}
