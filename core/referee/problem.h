#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

// A timetable problem as docs/formats/timetable.md writes it down, key by key. The referee has its own words for it and shares
// none with the planner, so that a slip in one is no slip in the other.

namespace dampward::referee {

// Whole minutes of true passing time since the start of the plan; also a number of them.
using Minute = std::int64_t;

// From the first minute up to, not including, the second.
struct Span {
  Minute from = 0, to = 0;
};

struct Unit {
  std::string id;
  std::optional<Minute> due;           // none: nobody waits for it
  std::int64_t priority = 0;           // told to the planner; nothing here is judged by it
  std::int64_t weight = 1;             // the same
  std::vector<std::string> after_due;  // operations that do not count for the due minute
};

enum class Attendance { attended, watched, unattended };

struct Demand {
  std::string capacity;
  std::int64_t amount = 0;
  Minute tail = 0;  // it is held so long after the operation's end
};

struct Operation {
  std::string id;
  std::optional<std::string> unit;
  Minute length = 1;
  Attendance attendance = Attendance::attended;
  std::optional<std::string> skill;
  std::int64_t people = 1;
  bool pausable = false;
  std::optional<std::string> station_skill;
  std::vector<std::string> stations;
  bool solvent = false;
  Minute clears = 0;
  std::vector<Demand> demands;

  bool needs_station() const { return station_skill.has_value() || !stations.empty(); }
};

struct Gap {
  std::string name;
  std::string from, to;
  Minute shortest = 0;
  std::optional<Minute> longest;
};

struct Member {
  std::string loading, unloading;
  Minute needs = 0;
  double volume_l = 0, mass_kg = 0;
  std::optional<double> coldest_c, hottest_c;
};

struct Load {
  std::string id;
  std::vector<std::string> ovens;
  std::string bake;
  std::optional<double> setting_c;
  std::vector<Member> members;
};

struct Person {
  std::string id;
  std::vector<std::string> skills;
  std::vector<Span> shifts, breaks;
};

struct Station {
  std::string id;
  std::int64_t places = 1;
  std::vector<std::string> serves;
};

struct Oven {
  std::string id;
  std::vector<Span> powered;
  bool near_solvent = true;
  Minute cools = 0;
  std::optional<double> volume_l, mass_kg;  // none: no limit
};

// From this minute on there is so much.
struct Step {
  Minute from = 0;
  std::int64_t amount = 0;
};

struct Capacity {
  std::string id;
  std::vector<Step> steps;
};

// What has been done, begun or agreed.
struct Fixed {
  std::string operation;
  Minute start = 0, end = 0;
  std::vector<std::string> people;
  std::optional<std::string> station;
};

struct PlanProblem {
  std::optional<std::string> starts_at;
  Minute horizon = 1;
  Minute now = 0;
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

// Litres, kilograms and degrees may pass their limit by so much: it is what rounding leaves behind.
inline constexpr double rounding = 0.001;

}  // namespace dampward::referee
