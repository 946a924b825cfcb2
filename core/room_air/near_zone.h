#pragma once

#include "core/quantity/quantity.h"
#include "core/quantity/shares.h"

namespace dampward::room_air {

// The air about somebody's hands, richer than the room's. Solvent is released into it and air is exchanged with the rest of the
// room (the far zone) at a steady rate:
//   Vn dCn/dt = G + β (Cf − Cn)        Vf dCf/dt = β (Cn − Cf) − m Q Cf
//   in the end Cf = G/(m Q), Cn = G/(m Q) + G/β
// Source: the two-zone model as in Nicas 2024 (Ann Work Expo Health 68:78, abstract read) and the public code of the B2Z package (CRAN,
// read).
struct NearZone {
  Volume volume;        // Vn, above zero
  VolumeFlow exchange;  // β, above zero
};

// Half of the free surface times the speed of the air there: as much flows out as in (from memory of the two-zone model).
// A ball about work on a stand, half a ball about work on a bench. Promise: radius and speed above zero.
NearZone ball(Length radius, Speed air);
NearZone half_ball(Length radius, Speed air);

// What the near zone holds above the room's air under a steady release, some time after it began with `at_start`:
//   G/β (1 − exp(−β t/Vn)) + E₀ exp(−β t/Vn)
// Near and far zone are worked out apart and added, each as if the whole release went into it alone: the sum is an excellent
// approximation of the near zone and the far one of the room (Nicas 2024, abstract read; held to the coupled equations in the tests).
VapourShare excess(const NearZone& zone, VolumeFlow source, VapourShare at_start, Duration after);
VapourShare steady_excess(const NearZone& zone, VolumeFlow source);

}  // namespace dampward::room_air
