#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/room_air/air_course.h"
#include "core/room_air/respirator.h"

namespace dampward::room_air {

// A stretch in the room, in minutes of the scene: at the hands of a release (its near zone), or elsewhere in the room.
struct Stay {
  int from = 0, to = 0;
  std::optional<std::size_t> at;  // which release of the scene
};

// One person's day. Minutes not listed are spent in clean air; stays do not overlap.
struct WorkDay {
  std::vector<Stay> stays;
  Duration shift;  // all hours at work that day: over eight, they shorten the limits
};

// The air somebody breathes in a day, as if without a respirator. What is listed as a minute's air is the richer of its two ends.
struct Breathing {
  std::optional<double>
      index;  // Σ of eight-hour averages over limits, long day counted; none: some part has no limit
  std::optional<double> index_far;    // the part of it that the room's mixed air alone would give
  std::optional<double> short_index;  // the same over the worst fifteen minutes and the short limits
  int short_at = 0;                   // when those fifteen minutes begin
  VapourShare peak;                   // all vapour together, worst minute
  int peak_at = 0;
  double danger = 0;         // worst minute: the highest share of any solvent's figure dangerous to life
  std::string danger_from;   // that solvent
  bool danger_known = true;  // false: some solvent breathed has no such figure
  int danger_at = 0;
  std::optional<std::size_t> danger_in;  // the release at hand then; none: the room's air itself
  std::string worst_solvent;             // adds most to the index
  VapourShare short_limit;               // of the mix breathed at the peak, all vapour together; 0: not known
  VapourShare life_limit;                // the same for the figures dangerous to life; 0: not known
  bool isocyanate_sprayed = false;
};

// Limits: 29 CFR 1910.1000(d), Brief and Scala (exposure_index.h). A solvent without a short limit may reach three times its
// eight-hour limit for fifteen minutes (excursion rule of the ACGIH, from memory).
// Promise: the course is of the scene.
Breathing breathing(const Scene& scene, const AirCourse& course, const WorkDay& day);

// The class for it: trusted with so many times the limit over the day and over fifteen minutes, and never used above the figure
// dangerous to life in any minute. Sprayed isocyanates, parts without a limit and unknown dangers to life: supplied air.
RespiratorChoice choose_respirator(const Breathing& day);

// All vapour together, over fifteen minutes, in which the class may be used: its factor times the short limit of the mix, or the
// figure dangerous to life where that is lower. 0: not known.
VapourShare highest_use(const Respirator& respirator, const Breathing& day);

// People needed to share the near work so that none passes the limit over the day; 1: no sharing is needed. None: sharing never
// helps, for the room's mixed air alone is too much, or no limit is known.
std::optional<int> turns_needed(const Breathing& day);

}  // namespace dampward::room_air
