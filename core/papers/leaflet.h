#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/papers/measure.h"
#include "core/papers/words.h"
#include "core/quantity/quantity.h"
#include "core/quantity/range.h"
#include "core/quantity/shares.h"
#include "core/quantity/temperature.h"

namespace dampward::papers {

// What hangs by the table of an owner with one set, one box and a brush.
struct LeafletSheet {
  // Where the warmth comes from: a lamp of so many watts, the sun on so much black lid, or none at all.
  enum class Heat { lamp, sun, none };

  std::string kind;
  Heat heat = Heat::none;
  Length length, width, height;  // of the box, inside
  Power lamp;
  dampward::Area black_lid;
  Temperature reads_from, reads_to;  // what the thermometer should show; not asked without heat
  Temperature never_above;
  std::string weakest;  // the part that sets it
  Duration safe;        // in the box
  int sunny_days = 0;   // of the safe time; 0: not in the sun
  Mass desiccant;
  bool damp_inside = false;  // some parts only dry at their surface
  std::vector<std::string> take_out, cover, tighten, touch_up;

  std::string lacquer;
  Range<Volume> needed;
  Volume thinner;  // at most; zero: none
  int coats = 0;
  Duration opens, closes, flash;  // after leaving the box; between coats
  bool sweats = false;            // what ends it: dew under the film, else damp back in the parts
  Duration touch_dry, before_closing, before_use;
  bool fungicide = false;

  // What a spray would do in a still room of that size: vapour as a share of the lower flammable limit, breath over the limit.
  Volume room;
  double share_of_limit = 0, times_limit = 0;

  std::vector<std::string> hazards;  // rows of the hazard table that only this kind brings
  Temperature air;
  RelativeHumidity humidity;
  std::string id;  // what the foot shows
};

// One page, never more: four figures, eight rows with a box for one's own clock where time counts, the signs at which to stop.
// Where it is short of room the reasons go first. Problem: words too long for one page, and which.
Result<Page> leaflet(const LeafletSheet& sheet, const Paper& paper, const Words& words,
                     const Measure& measure);

}  // namespace dampward::papers
