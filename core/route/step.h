#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/quantity/figure.h"
#include "core/quantity/quantity.h"

namespace dampward::route {

// What is done, in the order it is done. `coat` and `flash` come once a coat.
enum class StepCode {
  make_safe,  // disconnect, discharge, prove dead
  test,       // alignment and insulation written down before anything is touched
  repair,     // faults put right before the treatment seals them in
  strip,      // bag, tag, photograph
  take_out,   // cells, heat-tender parts, shields, valves where they come out
  clean,
  salt_proof,
  solvent_free,  // stands until free of solvent
  cover,         // masks that stand the bake: plugs, caps, paper; tape too where it is rated for the heat
  loosen,
  tighten,
  load,
  bake,
  unload,
  cabinet_in,  // the no-heat route's load, bake, unload
  cabinet,
  cabinet_out,
  tape,  // masks that do not stand the bake
  coat,
  flash,
  unmask,
  touch_up,
  film_dry,  // the last film dries
  airing,
  mark,
  reassemble,
  retest,
  recheck,
  // What only a unit that was thrown back needs.
  let_dry,        // an uncured or damp film dries and airs
  strip_off,      // the film comes off again
  stripped_free,  // stands until free of what took it off
  last = stripped_free,
};

enum class Attendance {
  attended,
  watched,  // hands free, someone with the skill on shift within call
  unattended,
};

struct Step {
  std::string id;  // route version and code: "r1.coat2"; the same after re-planning
  StepCode code = StepCode::make_safe;
  int turn = 0;  // which coat or flash, from 1; 0 where there is only one
  std::string title;
  std::string reason;  // why it is done, in one sentence
  std::string skill;   // of the crew (make_safe, test, strip, …); empty: nobody's hands are needed
  std::string
      station_skill;  // stations that serve this; empty: no place of its own (it stands in the oven, on a shelf)
  Range<Duration> minutes;  // hands-on, or running time
  int people = 1;
  Attendance attendance = Attendance::attended;
  std::string hazard_step;      // the step under which hazards are listed
  std::string hazard_step_too;  // a second one; mostly empty
  std::vector<std::string> notes;
  Mark mark = Mark::estimate;  // how the minutes are known
  std::string settle;          // what would settle them
};

enum class GapKind {
  order,      // one after the other
  same_stay,  // load, bake, unload: within one stay in the oven
  warm_window,  // from leaving the oven to the first coat, and to the end of the last flash; the joint's physics sets it
  flash,      // between coats
  touch_dry,  // film dry to the touch before masks come off
  airing,     // before a case is closed
  recheck,    // constants have settled
};

// `to` starts at least `shortest` after `from` ends, and at most `longest` where there is one.
struct StepGap {
  GapKind kind = GapKind::order;
  std::string from, to;  // step ids
  Duration shortest;
  std::optional<Duration> longest;
  bool to_end = false;  // `longest` holds to the end of `to`, not to its start
  std::string reason;
};

// Whether somebody carries the unit in it: into and out of the oven or the dry box.
bool is_carried(StepCode code);
// "coat", "solvent_free" … as ids, records and files write it.
std::string code_word(StepCode code);
// "r1.coat2"
std::string step_id(int version, StepCode code, int turn = 0);

}  // namespace dampward::route
