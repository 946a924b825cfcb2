#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/civil_time.h"
#include "core/papers/measure.h"
#include "core/papers/words.h"
#include "core/quantity/quantity.h"
#include "core/quantity/shares.h"

namespace dampward::papers {

// What hangs at the door of the spray place: may I be in here, and with what on?
struct SafetySheet {
  std::string place, shop;

  // From the first open can to clear air, in order of time.
  struct Stretch {
    Instant fan_on, last, clear;  // `clear`: mask off, lamps and heat again
    Instant fan_off;              // not before
  };
  std::vector<Stretch> stretches;
  std::size_t worst = 0;  // the stretch with the worst minute; its moments stand at the top

  std::optional<double> allowed;  // of the lower flammable limit; none: nothing burns
  std::optional<double> peak;     // the same at the worst minute, mixed air; none: not known
  std::optional<double> near;     // the same at the gun
  std::optional<double> people;   // the same where people's limits are reached; none: not known
  struct Point {
    Instant at;
    double share = 0;
  };
  std::vector<Point> curve;
  std::optional<Duration> purge;  // none: no fresh air
  VolumeFlow fan, fan_fire;
  std::optional<VolumeFlow> fan_people;  // none: no air is known to be enough

  enum class Mask { none, half, full, supplied, not_enough };
  struct Person {
    std::string name;
    std::optional<Instant> day;        // none: no vapour at all
    std::optional<double> average;     // of eight hours, over the limits; none: not known
    std::optional<double> short_term;  // the same over fifteen minutes
    std::optional<Instant> short_at;
    VapourShare peak;
    std::optional<VapourShare> highest_use;  // of the mask; none: not known
    Mask mask = Mask::not_enough;
    double trust = 1;  // times the limit
  };
  std::vector<Person> crew;

  Length length, width;
  int ways_out = 0;
  std::vector<std::string> hot;  // what may be hot within 6.1 m

  struct Group {
    std::string when;                  // "mix", "coat" …
    std::vector<std::string> hazards;  // rows of the hazard table
  };
  std::vector<Group> cautions;
  WallClock clock{std::chrono::seconds(0)};
  std::string plan;  // id and time, as the foot shows it
};

// Moments, the day's vapour under its walls, the room with its ways out, what to tick before the gun, everybody's own air, and
// the cautions of lacquer work. What is not known is told as such, never drawn as safe.
Pages safety_sheet(const SafetySheet& sheet, const Paper& paper, const Words& words, const Measure& measure);

}  // namespace dampward::papers
