#pragma once

#include <optional>
#include <span>
#include <vector>

#include "core/room_air/mixture.h"
#include "core/room_air/release.h"
#include "core/room_air/room.h"
#include "core/room_air/vapour.h"

namespace dampward::room_air {

// A room and all that gets loose in it: what the air is worked out from.
struct Scene {
  Room room;
  AirState air;
  std::vector<Mixture> liquids;  // volatile parts; releases name them by place
  std::vector<Release> releases;
};

// The room's air minute by minute, from the first release until the last vapour is carried off (or three days after the last release,
// or at its end where no fresh air ever comes). Between two minutes a share runs steadily from the one value to the other.
struct AirCourse {
  int from = 0;                            // minute of the first value; before it the air is clean
  std::vector<VolatilePart> solvents;      // each once
  std::vector<std::vector<double>> share;  // of the air, by solvent and minute
  int minutes() const { return share.empty() ? 0 : static_cast<int>(share.front().size()); }
  int end() const { return from + minutes(); }
  bool clears() const;  // the air is clean at the end
  // Of one solvent; clean before the course, and after it as at its end.
  VapourShare at(std::size_t solvent, int minute) const;
};

// Each minute's release is taken as steady, its balance solved exactly (room.h). Where no fresh air comes in the vapour stays and
// fills only the share m of the room. Promise: releases name liquids of the scene.
AirCourse air_course(const Scene& scene);

// What the near zone of a release holds above the room's air, by solvent of the course, at each minute from its `from` to its `to`.
// Empty: nobody is near it.
std::vector<std::vector<double>> near_excess(const Scene& scene, const AirCourse& course,
                                             const Release& release);

// Share of the lower flammable limit that so much of each solvent is: Σ C/L, the same as Le Chatelier's rule for the mix.
double flammable_share(const AirCourse& course, std::span<const double> shares, AirState air);
// Of the room's air at a minute.
double flammable_share(const AirCourse& course, int minute, AirState air);

// The worst minute of the room's air, and how rich any near zone ever is.
struct FlammablePeak {
  double share = 0;  // of the lower flammable limit
  int minute = 0;
  double near_share = 0;
  int near_minute = 0;
};
FlammablePeak flammable_peak(const Scene& scene, const AirCourse& course);

// Fresh air that would hold the room at `share` of the lower flammable limit, and everybody's limits over the day at the room's mixed
// air, were the scene's worst minute to go on for ever. The two differ by one to two orders, and the first never implies the second.
// People: none where some solvent has no limit; it says nothing of the near zone, which no fan of the room clears.
struct AirForScene {
  VolumeFlow fire;
  std::optional<VolumeFlow> people;
};
AirForScene air_for(const Scene& worst_for_fire, const Scene& worst_for_people, double share);

}  // namespace dampward::room_air
