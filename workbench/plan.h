#pragma once

#include <functional>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/base/civil_time.h"
#include "core/base/id.h"
#include "core/base/problem.h"
#include "core/base/result.h"
#include "core/equipment/kind.h"
#include "core/hazards/hazard.h"
#include "core/line/answer.h"
#include "core/line/objective.h"
#include "core/line/problem.h"
#include "core/quantity/quantity.h"
#include "core/quantity/range.h"
#include "core/quantity/shares.h"
#include "core/quantity/temperature.h"
#include "core/quantity/temperature_curve.h"
#include "core/records/records.h"
#include "core/route/worklists.h"
#include "workbench/mixed_pot.h"
#include "workbench/rework.h"
#include "workbench/rule.h"
#include "workbench/window_remedy.h"

namespace dampward::workbench {

struct Workshop;

// The air the plan counts on: what the windows, the oven's floor and the vapour work with.
struct RulingAir {
  Temperature temperature;
  RelativeHumidity humidity;
  Temperature dew_point;
  Temperature warmest, coolest;  // what the shop may come to while the plan runs
  bool one_reading = false;      // nothing but a single reading stands behind a plan of days
  std::string because;  // "reading of 06:40 in the spray room" or why the month's 95th percentile rules
};

// One part of one unit in the oven.
struct PartInOven {
  UnitId unit;
  PartId part;
  std::string name;
  Temperature peak;   // hottest it may become at the oven's worst place
  Temperature limit;  // its own limit, before the margin; margin kept = limit − peak
  std::string limit_source;
  std::string target;  // surface, porous or deep
  bool asked = false;  // whether the hold waits for it
  bool dry = false;
  std::optional<double> residual;  // share of its removable moisture still inside; none: nobody can reckon it
  std::string note;                // what stays damp, in plain words; empty where nothing does
};

// What the units of one kind in a mixed load cost the others.
struct UnitsCost {
  std::vector<UnitId> units;
  Temperature set_without;  // where the oven would stand without them
  Duration costs;           // so much longer the others are in the oven
  bool weakest = false;     // they hold the part that allows least
};

// One of two loads that a mixed one would better be.
struct SplitOff {
  std::vector<UnitId> units;
  Temperature set_point;
  Duration hold, in_oven;
};

// The oven stepped down after the bake, so that light and heavy parts meet the gun in one window.
struct StepDownHold {
  Temperature to;             // of the thermostat, vent shut, lamps off
  Duration takes;             // until the first unit may leave
  Duration at_most;           // then the last one leaves within this time: damp goes back
  RelativeHumidity humidity;  // of the oven's air meanwhile, from the leak
};

struct Load {
  std::string id;
  OvenId oven;
  std::string oven_name;
  std::vector<UnitId> units;
  Temperature set_point;
  Duration warm_up;              // until the slowest asked part is at temperature
  Duration hold;                 // on the safe side of every range
  Duration hold_nominal;         // at the typical figures
  std::optional<Duration> rule;  // the trade's linear rule; none outside 49 to 71 °C
  UnitId weakest_unit;
  PartId weakest_part;
  std::string weakest_name;
  std::vector<UnitsCost> costs;           // empty where all units are of one kind
  std::vector<SplitOff> split;            // empty where splitting gains nobody enough
  std::string recipe;                     // the same in words
  std::optional<StepDownHold> step_down;  // none: units leave hot
  std::vector<PartInOven> parts;
  TemperatureCurve
      slowest;  // what a thermometer amid its slowest unit reads, from closing the door; typical figures
  Temperature holds_from;  // what it must read for the hold to start
  TemperatureStep spread;  // place and thermostat, either way
  Instant starts, first_out, last_out;
  std::optional<double>
      wet_share;  // of the lower flammable limit, were one of its units put in fresh from the gun; none: nothing burns
};

// Damp back in one part that the oven had dried.
struct DampBackIn {
  PartId part;
  std::string name;
  double share = 0;     // of the water driven out, by the end of the last flash as planned, at most
  Duration tenth_back;  // from leaving the oven until a tenth of it is back; a day where that takes longer
  bool gates = false;   // a slow part: the window ends before too much of it is back
  std::string words;    // what to do about it; empty where little comes back
};

// When one unit may meet the gun after the oven.
struct Window {
  UnitId unit;
  Instant leaves_oven, first_coat;
  Duration opens_after;              // after leaving the oven
  Duration closes_after;             // the last flash must be over by then
  std::string opened_by, closed_by;  // which rule sets each end
  Duration trade_opens_after;        // "coat while warm": at once
  std::vector<DampBackIn> damp_back;
};

struct UnitStep {
  std::string id;  // route version and code; survives re-planning
  std::string title;
  std::string reason;
  std::string skill;
  std::string attendance;                    // attended, watched or unattended
  std::string hazard_step, hazard_step_too;  // which rows of the hazard table speak of it
  Range<Duration> length;
  Instant starts, ends;
  std::vector<PersonId> people;
  std::string station;
};

struct UnitPlan {
  UnitId unit;
  KindId kind;
  std::string kind_name;
  std::string way;  // spray_stripped or brush_assembled
  std::string way_reason;
  std::string kind_way_reason;        // the kind's own, as it was written
  Duration spray_hands, brush_hands;  // hands-on time of both ways, typical figures
  bool no_heat = false;
  std::string load;  // id of its load; empty on the no-heat route
  std::string no_heat_reason;
  std::string measure;            // the cheapest measurement that would raise its limit; empty: none would
  std::optional<Duration> saves;  // hours that measurement would save
  route::Worklists lists;
  std::vector<HazardId> hazards;      // of its parts, each once
  std::vector<std::string> findings;  // as it was queued
  bool transmits = false, semiconductors = false;
  Range<Volume> lacquer;  // as supplied, lost overspray included
  Range<Volume> thinner;
  int coats = 0;
  Range<Length> wet_coat;  // of each, as a comb reads it
  std::vector<UnitStep> steps;
  Instant done;
  std::optional<Instant> due;  // end of the due day
  std::vector<std::string> notes;
};

// A change of the shop that was tried, and lets a refused unit in.
struct Rung {
  std::string change;             // as plan --what-if takes it
  std::string words;              // the same for a person
  double cost = 0;                // in the shop's own unit
  bool estimated = false;         // nobody in the shop said what it costs
  bool with_whole_queue = false;  // tried with everything in the queue; false: with the unit alone
  Instant done;                   // when the unit would be ready
  std::vector<UnitId> loses;      // units the plan treats now and would not then
};

struct Refusal : Barrier {
  UnitId unit;
  KindId kind;
  std::vector<WindowRemedy> remedies = {};  // what would make a window, where none is the rule in the way
  std::vector<Rung> ladder = {};            // cheapest first
  std::string ladder_reason = {};           // why it has no rung
};

struct StockNeed {
  std::string item;
  std::string name;
  Range<Volume> needed;
  Volume in_stock;             // not past its date on the day of the last coat
  std::vector<LotId> lots;     // in the order to use them: first expired first
  std::vector<LotId> expired;  // there, but past their date by then
  bool is_short = false;
  Volume to_get;  // before work begins, so that even the worst is covered
  struct Lot {
    LotId lot;
    Volume left;
    std::optional<Date> use_by;
    bool expired = false;  // past its date by the last coat
  };
  std::vector<Lot> shelf = {};  // all of them, those to use first, in their order
};

struct RoomAir {
  std::string place;
  std::optional<VapourShare> lower_limit;  // flammable limit of the vapour mix; none: nothing in it burns
  double limit_share = 0.10;               // of that limit the plan may reach
  std::optional<double>
      worst_share;  // of that limit, the room's mixed air at the worst minute of the timetable
  std::optional<Instant> worst_at;
  std::optional<double>
      near_share;  // the same in the richest near zone: it may pass the limit, for nothing hot is in it
  std::optional<Duration>
      purge;                 // from the allowed share to clear air, nothing more coming; none: no fresh air
  VolumeFlow fan, fan_fire;  // there, needed for fire
  std::optional<VolumeFlow>
      fan_people;  // needed for people in the mixed air; none: no air is known to be enough
  std::optional<double>
      exposure_index;  // sum of concentration over limit at the gun, near zone counted, no respirator; none: not known
  std::string respirator;
  struct Point {
    Instant at;
    double share = 0;  // of the lower flammable limit
  };
  std::vector<Point> curve;  // the mixed air over the worst day, thinned
  std::optional<double> people_share =
      {};  // of the lower flammable limit, mixed air that comes to people's limits together; none: not known
  Length length = {}, width = {};
  int ways_out = 0;
  std::vector<std::string> hot = {};  // ovens and heat that are not known to stand 6.1 m away
  std::vector<std::string> because;
};

// From when to when somebody has the respirator on.
struct MaskOn {
  Instant from, to;
};

// What one of the crew breathes on one day, as if without a respirator, and what they wear.
struct PersonDay {
  Instant begins, ends;                     // first shift to last of that date
  std::optional<double> exposure_index;     // over the day; none: not known
  std::optional<double> stel_index;         // over the worst fifteen minutes; none: not known
  std::optional<double> respirator_factor;  // as in PersonAir
  bool supplied_air = false;
  bool sprays = false;        // a gun in hand: a mask against mist all the same
  std::vector<MaskOn> masks;  // in order, apart; empty where nothing is worn
};

// What one of the crew breathes on their worst day, as if without a respirator.
struct PersonAir {
  PersonId person;
  std::string name;
  std::optional<Instant> day;  // start of that day's work; none: no vapour at all
  std::optional<double>
      exposure_index;  // Σ of eight-hour averages over limits, shortened for a long day; none: not known
  std::optional<double> exposure_far;  // the part that the room's mixed air alone would give
  std::optional<double> stel_index;    // the same over the worst fifteen minutes
  std::optional<Instant> stel_at;
  VapourShare peak;  // all vapour together, worst minute
  std::optional<Instant> peak_at;
  double danger = 0;        // worst minute over the figure immediately dangerous to life
  double limit_factor = 1;  // what the length of the day leaves of a limit
  std::string respirator;   // class in words
  std::optional<double>
      respirator_factor;  // how many times the limit it is trusted with; none: none is needed
  bool supplied_air = false;
  std::optional<VapourShare> highest_use;  // of all vapour together over fifteen minutes; none: not known
  std::string because;
  std::vector<std::string> remedies;  // what would spare the respirator, or a weaker class do
  std::vector<PersonDay> days = {};   // every day they come in, in order
};

// What the timetable takes of a limited power supply.
struct PowerUse {
  Power gives, always_on;
  Power peak;                      // in the heaviest minute, what is always on included
  std::optional<Instant> peak_at;  // none: nothing is switched on
};

struct Caution {
  HazardId id;
  std::string step, text, guard, stop_sign, effect, source, defer;
};

struct Plan {
  std::string shop;
  WallClock clock{std::chrono::seconds(0)};
  Instant from;
  RulingAir air;
  std::string lacquer_name;
  std::map<std::string, std::string> names;      // of stations, ovens and people, by id
  std::map<std::string, std::string> languages;  // of the people who asked for one, by id
  std::vector<Load> loads;
  std::vector<Window> windows;
  std::vector<UnitPlan> units;         // treated, in order of the queue's due dates
  std::vector<equipment::Kind> kinds;  // of these, each once, in order
  std::vector<Refusal> refused;
  std::string cost_unit;  // of what the rungs of their ladders cost
  std::size_t queued = 0;
  std::vector<StockNeed> stock;
  std::vector<MixedPot> mixing;  // in order of time
  RoomAir room;
  std::optional<PowerUse> power;  // none: nobody wrote down what the supply gives
  std::vector<PersonAir> people;  // in the order of the crew; who does not come in is left out
  std::vector<Caution> cautions;
  std::vector<std::string> warnings;  // tight, doubtful or in disagreement; each a sentence
  line::Problem problem;              // what the timetable had to keep, and
  line::Answer answer;
  line::Objective objective,
      at_best;  // how good it is, and what no timetable of these units could be below                // where it put everything
  std::optional<Instant> at;     // planned on from what happened until then; none: the log is not asked
  std::vector<MovedStep> moved;  // against the plan without the log; empty without `at`
  std::vector<Rework> rework;    // for every setback in the log; empty without `at`

  // Of a station, an oven or a person; the id itself where it has none.
  std::string name_of(const std::string& id) const {
    const auto found = names.find(id);
    return found == names.end() || found->second.empty() ? id : found->second;
  }
};

struct PlanOptions {
  std::optional<LocalTime> from;  // none: the queue's own start
  // Fixes what the log says has begun by then and plans the rest from then on; none: as if nothing had happened.
  std::optional<Instant> at;
  std::function<bool()> keep_going = [] { return true; };  // false: stop as soon as it is safe to
  std::function<void(const std::string&)> progress = [](const std::string&) {};
  // Operations placed in looking for a better timetable than the first (line::PlanOptions). With `at`, for the plan that the day
  // began with: what is planned on keeps its order, so that what has not gone wrong stays where it was.
  std::int64_t effort = 0;
};

// The treatment plan for everything in the queue. The same workshop, records and options give the same plan.
// Problems: the records cannot be read, or there is no start date anywhere; with `at`, an event later than it, or a log that
// contradicts itself or the routes of its units.
Result<Plan> make_plan(const Workshop& workshop, const records::RecordStore& records,
                       const PlanOptions& options);

}  // namespace dampward::workbench
