#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/coating/warm_window.h"
#include "core/quantity/quantity.h"
#include "core/quantity/range.h"
#include "core/quantity/shares.h"
#include "core/quantity/temperature.h"
#include "core/route/worklists.h"
#include "workbench/plan.h"
#include "workbench/workshop.h"

namespace dampward::workbench {

// Where somebody with one set at home gets a little steady warmth from.
enum class HomeHeat {
  lamp_box,  // a lamp behind a tin sheet in a metal box
  sun_box,   // the same box in the sun, part of its lid blackened
  dry_box,   // a tight box with desiccant, no heat at all
};

struct BoxSize {
  Length length, width, height;  // inside
};

struct LeafletQuestion {
  KindId kind;
  HomeHeat heat = HomeHeat::lamp_box;
  std::optional<Power> lamp;   // none: the strongest usual lamp that cannot overheat the set
  std::optional<BoxSize> box;  // none: the set with a hand's breadth around it
  Temperature air = Temperature::celsius(30);
  RelativeHumidity humidity = RelativeHumidity::percent(80);
  LacquerId lacquer;
};

// The box with the set in it.
struct HomeDrying {
  BoxSize box;
  Power heat;                     // lamp, or sun at its highest; zero in a dry box
  Power strongest;                // that cannot bring the weakest part over its limit less margin
  std::optional<Area> black_lid;  // in the sun: so much of the lid is blackened, the rest covered or white
  Temperature reading_low, reading_high;  // a thermometer amid the box shows between these
  Temperature never_above;                // limit of the weakest part less margin
  std::string weakest;
  Duration usual, safe;  // in the box; in the sun only sunny hours count
  int sunny_days = 0;    // for the safe time; zero where the sun is not asked
  Mass desiccant;
  std::vector<std::string> stays_damp;  // what does not dry inside in this time, in plain words
};

struct HomeCoat {
  std::string lacquer;
  int coats = 0;
  Range<Volume> needed;    // of lacquer, by brush, in all
  Volume thinner;          // to have ready
  Duration flash;          // between coats, and after the last
  Duration opens, closes;  // after leaving the box
  coating::Closes closes_by = coating::Closes::never;
  std::string closed_by;  // the same in words
  Duration touch_dry;
  Duration before_closing, before_use;
};

// What the same set would do to the air of a small room if somebody sprayed it there.
struct SprayedAtHome {
  Volume room;
  Volume lacquer_sprayed, lacquer_brushed;  // at most
  double share_of_limit = 0;  // of the lower flammable limit, one coat's vapour in the still room
  double times_limit = 0;     // that air over the exposure limits, summed over the solvents
};

// One page for an owner with one set and one heat source. Brush only.
struct Leaflet {
  std::string kind;
  HomeHeat heat = HomeHeat::lamp_box;
  Temperature air;
  RelativeHumidity humidity;
  std::optional<Barrier> refused;  // then nothing below is filled in
  route::Worklists lists;
  HomeDrying drying;
  HomeCoat coat;
  SprayedAtHome spray;
  bool fungicide = false;  // the lacquer holds a poison against mould
  std::vector<std::string> warnings;
  std::vector<Caution> cautions;
  std::vector<HazardId> of_this_kind;  // of these cautions, those that not every home meets
};

// `shipped` is a workshop with nothing of its own. The same question gives the same leaflet. Problems: a kind or lacquer in no
// table, a box of no size.
Result<Leaflet> leaflet(const Workshop& shipped, const LeafletQuestion& question);

}  // namespace dampward::workbench
