#pragma once

#include <optional>

#include "core/base/result.h"
#include "core/quantity/quantity.h"
#include "core/quantity/shares.h"
#include "core/shop/shop.h"

namespace dampward::room_air {

// A room whose air mixes less than perfectly: of the fresh air Q only m Q does its work (m = 0.1 poor … 1 perfect, K = 1/m).
//   V dC/dt = G − m Q C
// Source: ACGIH Industrial Ventilation, dilution equations (from memory; checked against closed-form worked values).
// Left out: the near zone, where the person at the gun stands in more than the room's average.
struct Room {
  Volume volume;
  VolumeFlow fresh_air;
  double mixing = 0.3;
};

// The room of a spray place. Fan and air changes both given: the lesser counts. Nothing open to the outside: no fresh air comes in,
// whatever the fan. Problem: no size, or a mixing factor outside 0 to 1.
Result<Room> room_of(const shop::SprayPlace& place);

// Share of vapour after a time under a steady source of pure vapour:
//   C(t) = G/Q' (1 − exp(−Q't/V)) + C₀ exp(−Q't/V), Q' = m Q; without fresh air C₀ + G t / V.
// Never above 1. Promise: the room has a volume.
VapourShare concentration(const Room& room, VolumeFlow source, VapourShare at_start, Duration after);

// Where it ends: G / (m Q). None: no fresh air, it only rises.
std::optional<VapourShare> steady_concentration(const Room& room, VolumeFlow source);

// Time with the source gone until the share has fallen: V/(m Q) ln(C₁/C₂). None: no fresh air. 0 where it is low enough.
std::optional<Duration> purge_time(const Room& room, VapourShare from, VapourShare to);

// A batch of vapour in air that stands still: it fills only the share m of the room (our reading of the mixing factor where no
// fan runs; heavy vapour lies low). Never above 1.
VapourShare still_air(const Room& room, Volume vapour);

// The most a batch released over a time can come to, whatever its course: the lesser of its steady share and of all of it in still
// air.
VapourShare worst_case(const Room& room, Volume vapour, Duration released_over);

// Fresh air that holds a steady source at `allowed`: G / (C m). Promise: allowed and mixing above zero.
VolumeFlow air_needed(VolumeFlow source, VapourShare allowed, double mixing);

}  // namespace dampward::room_air
