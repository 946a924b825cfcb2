#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/room_air/exposure_limit.h"
#include "core/room_air/respirator.h"
#include "workbench/plan.h"

namespace dampward::workbench {

struct Workshop;

// So much of the mix used up within a time.
struct UsedUp {
  Volume mix;
  Duration within;
};

// What is put on in the spray place, and for how long. Promise: amounts and times above zero.
struct AirQuestion {
  std::optional<GunId> gun;       // none: whichever of the shop's gives off most
  std::optional<UsedUp> used_up;  // none: the gun is on without a pause
  std::optional<Duration> at_it;  // at the gun in a day; none: while `used_up` lasts, or the whole shift
  std::optional<Duration>
      shift;  // of whoever holds it, over eight hours shortens the limits; none: the crew's longest
  std::optional<Temperature> warm;  // the air of the place; none: the warmest its records let expect
};

// One solvent of the vapour.
struct VapourPart {
  std::string name;
  VapourShare at_the_gun;
  std::optional<room_air::RulingLimit> limit;  // none: no authority of the table gives one
  VapourShare lower_limit;
  bool assumed = false;  // some figure stands in for one nobody knows
};

// The air of a place while lacquer, or a solvent, is in use there.
struct AirAnswer {
  std::string basis, place, gun, liquid;
  Volume volume;
  VolumeFlow fan;
  double mixing = 0;
  Temperature temperature;
  VolumeFlow rate;                // of the mix
  MassFlow volatiles;             // that become vapour
  VolumeFlow most_rate;           // of the mix the place carries off before it passes the allowed share
  std::optional<Barrier> closed;  // why no solvent may be used there at all; the figures hold all the same
  std::optional<VapourShare> lower_limit;  // none: nothing in it burns
  double limit_share = 0.10;
  std::string limit_reason;
  std::optional<double> room_share, near_share;  // of the lower limit: the mixed air, and about the hands
  bool fire_safe = false;  // the mixed air stays within its share; it says nothing of people
  VolumeFlow fan_fire;
  std::optional<VolumeFlow> fan_people;                 // none: no air is known to be enough
  VapourShare in_the_room, at_the_gun;                  // all vapour together
  std::optional<double> exposure_room, exposure_index;  // as if on all day; none: some solvent has no limit
  Duration at_it;
  std::optional<double> exposure_day;  // the same for the time at the gun
  bool people_safe = false;            // nobody needs a respirator against vapour
  room_air::RespiratorChoice respirator;
  std::optional<VapourShare>
      highest_use;                // of that class, all vapour together; none: not known, or none is worn
  std::optional<Duration> purge;  // until clear air, nothing more coming; none: no fresh air
  std::vector<VapourPart> parts;
  std::vector<std::string> because, warnings;
  std::vector<Caution> cautions;
  bool safe() const {
    return !closed && fire_safe && respirator.verdict != room_air::RespiratorChoice::Verdict::refuse;
  }
};

// Vapour in the shop's spray place from one gun or brush with the lacquer in use; the same rooms and figures as a plan's. `records`
// (null: none) tell how warm the place may be.
// Problems: a place without size or fresh air, no such gun, an unknown lacquer; nothing known of the air.
Result<AirAnswer> air_answer(const Workshop& workshop, const records::RecordStore* records,
                             const AirQuestion& question);

}  // namespace dampward::workbench
