#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/civil_time.h"
#include "core/base/id.h"
#include "core/quantity/quantity.h"
#include "core/quantity/range.h"
#include "core/quantity/temperature.h"

namespace dampward::workbench {

struct Plan;

// A value of the shop's files as it stands and as somebody wonders about it, each as written there.
struct ChangedValue {
  std::string path;
  std::optional<std::string> before;  // none: the files do not give it
  std::string after;
};

template <class T>
struct Moved {
  T before, after;
};

struct LostUnit {
  UnitId unit;
  std::string rule;  // word of the rule now in its way
  std::string reason;
};

struct MovedFinish {
  UnitId unit;
  Moved<Instant> done;
};

// The way a unit is dried: its oven, or none for the way without heat.
struct MovedHeat {
  UnitId unit;
  Moved<OvenId> oven;
};

// The bake of a unit that has an oven both times.
struct MovedBake {
  UnitId unit;
  Moved<Temperature> set_point;
  Moved<Duration> warm_up, hold;
};

struct MovedPeak {
  UnitId unit;
  PartId part;
  std::string name;
  Moved<Temperature> peak;
};

struct MovedWindow {
  UnitId unit;
  Moved<Duration> opens_after, closes_after;
};

struct MovedNeed {
  std::string item, name;
  Moved<Range<Volume>> needed;
};

// Hands-on time of one person over the plan.
struct MovedWork {
  PersonId person;
  Moved<Duration> hands_on;
};

struct MovedRoom {
  std::string place;
  Moved<std::optional<double>> worst_share;     // of the lower flammable limit
  Moved<std::optional<double>> exposure_index;  // at the gun, no respirator
  Moved<std::string> respirator;
  Moved<VolumeFlow> fan, fan_fire;
  Moved<std::optional<VolumeFlow>> fan_people;
};

// What two plans of one queue do not share. Only what moved is listed; units treated in one plan alone stand in gained or lost
// and nowhere else.
struct PlanDifference {
  std::vector<ChangedValue> changes;  // what was changed, as handed in
  std::vector<UnitId> gained;
  std::vector<LostUnit> lost;
  std::vector<UnitId> newly_late, no_longer_late;
  std::optional<Moved<Instant>> finish;  // of the whole plan; none: one of them treats nothing
  std::vector<MovedFinish> finishes;
  std::vector<MovedHeat> heat;
  std::vector<MovedBake> bakes;
  std::vector<MovedPeak> peaks;
  std::vector<MovedWindow> windows;
  std::vector<MovedNeed> needs;
  std::vector<MovedWork> work;
  std::optional<MovedRoom> room;
  std::vector<std::string> words;  // the same for a person, the weightiest first; metric

  bool nothing_moved() const;
};

// Figures count as moved where a reader would see it, once rounded to 0.1 K, 1 min, 0.01 L, 0.1 % of the flammable limit, 0.01 of the
// exposure index, 0.1 m³/min, 0.1 h of hands-on work.
PlanDifference plan_difference(const Plan& before, const Plan& after, std::vector<ChangedValue> changes);

}  // namespace dampward::workbench
