#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/quantity/quantity.h"
#include "core/quantity/temperature.h"

namespace dampward::line {

// Whole minutes since the start of the plan. Everything here is counted on the true passage of time, never on a wall clock.
using Minute = std::int64_t;

// From the first minute up to, not including, the second.
struct Span {
  Minute from = 0;
  Minute to = 0;
  Minute length() const { return to - from; }
  friend bool operator==(const Span&, const Span&) = default;
};

// Spans in order, apart from each other (two that touch are one).
using Calendar = std::vector<Span>;

enum class Attendance {
  attended,    // people work on it from start to end, each inside one shift of theirs
  watched,     // hands free, but someone with the skill is on shift within call all the time (breaks allowed)
  unattended,  // runs by itself, through nights too
};

// What an operation takes of a capacity while it runs, and for `tail` minutes after its end (vapour lingers).
struct Demand {
  std::string capacity;
  std::int64_t amount = 0;
  Minute tail = 0;
};

struct Operation {
  std::string id;
  std::string unit;   // id of the Unit it belongs to; empty: of its load
  Minute length = 0;  // hands-on or running time, breaks not counted
  Attendance attendance = Attendance::attended;
  std::string skill;                  // needed of each person; empty: no person (unattended only)
  int people = 1;                     // attended only
  std::string station_skill;          // any station that serves this; empty: see `stations`
  std::vector<std::string> stations;  // or one of these; both empty: it needs no place
  std::vector<Demand> demands;
  bool pausable = false;  // attended work that may stop while one of its people has a break
  bool solvent = false;   // solvent is in the open while it runs: no oven with `near_solvent` may be hot
  Minute clears = 0;      // … and for so long after its end, until the air is purged
};

// `to` starts no sooner than `shortest` and, where given, no later than `longest` minutes after `from` ends.
struct Gap {
  std::string name;  // what the gap stands for, as reasons name it: "warm window of 0042"
  std::string from, to;
  Minute shortest = 0;
  std::optional<Minute> longest;
};

// One unit's place in a load.
struct Member {
  std::string loading, unloading;  // attended operations of one unit; each unit may leave on its own minute
  Minute needs = 0;                // the bake lasts at least so long
  Volume volume{};
  Mass mass{};
  std::optional<Temperature> coldest, hottest;  // the load's setting lies between
};

// Units that share one bake. The oven is theirs alone from the start of the first loading to the end of the last
// unloading; it is hot, powered and watched from the start of the bake to the end of the last unloading, and the
// bake's demands hold as long. Every loading ends before the bake starts; every unloading starts after it ends.
struct Load {
  std::string id;
  std::vector<std::string> ovens;  // it may go into any one of these
  std::string bake;                // a watched operation of no unit
  std::vector<Member> members;
  std::optional<Temperature> setting;  // what the oven is set to; none: nobody asks
};

struct Person {
  std::string id;
  std::vector<std::string> skills;
  Calendar shifts;  // on shift, within call; breaks are inside
  Calendar breaks;
};

struct Station {
  std::string id;
  int places = 1;                   // operations at once
  std::vector<std::string> serves;  // station skills
};

// The defaults of `near_solvent` and the limits are the page's; a caller who knows better says so.
struct Oven {
  std::string id;
  Calendar powered;
  bool near_solvent = true;      // may not be hot while any operation with `solvent` runs or clears
  Minute cools = 0;              // still counts as hot for so long after the last unloading
  std::optional<Volume> volume;  // the most its load may take up and weigh; none: no limit
  std::optional<Mass> mass;
};

// A limit on what may go on at once, changing with time: each step holds until the next, the last for ever,
// and before the first there is nothing.
struct Capacity {
  struct Step {
    Minute from = 0;
    std::int64_t amount = 0;
  };
  std::string id;
  std::vector<Step> steps;
};

// What is promised to someone: all its operations, or none of them, are in a plan.
struct Unit {
  std::string id;
  std::optional<Minute> due;  // its last operation but those named in `after_due` should end by then
  int priority = 0;           // higher goes first among equal due minutes
  std::int64_t weight = 1;    // worth of a minute of lateness
  std::vector<std::string>
      after_due;  // operations that do not count for the due minute (a re-check days later)
};

// What has been done, begun or agreed: it stands as it is, whatever the rules say of it, and all it takes is taken.
// A load of which something is fixed is in the oven that one of its fixed operations names as station, or in its only one.
struct Fixed {
  std::string operation;
  Minute start = 0;  // may lie before minute 0
  Minute end = 0;    // of something that runs: its expected end
  std::vector<std::string> people;
  std::string station;  // as in a Placement
};

// docs/formats/timetable.md says what each rule means to the minute.
struct Problem {
  Minute horizon = 0;  // nothing starts or ends outside 0 … horizon
  Minute now = 0;      // nothing that is not fixed starts before this
  std::vector<Unit> units;
  std::vector<Operation> operations;
  std::vector<Gap> gaps;
  std::vector<Load> loads;
  std::vector<Person> people;
  std::vector<Station> stations;
  std::vector<Oven> ovens;
  std::vector<Capacity> capacities;
  std::vector<Fixed> fixed;
};

}  // namespace dampward::line
