#pragma once

#include <optional>
#include <span>

#include "core/quantity/quantity.h"
#include "core/quantity/shares.h"
#include "core/room_air/mixture.h"

namespace dampward::room_air {

// A stretch of someone's day in air of one kind.
struct Breathed {
  VapourShare share;
  Duration time;
};

// Average over eight hours: Σ C t / 8 h. Hours that are not listed count as clean; a day longer than eight hours is still divided
// by eight. Source: 29 CFR 1910.1000(d)(1)(i) (worked example checked).
VapourShare eight_hour_average(std::span<const Breathed> day);

// One solvent and its limit.
struct Agent {
  VapourShare share;
  VapourShare limit;
};
// Σ C/L, to stay at or under 1. Source: 29 CFR 1910.1000(d)(2)(i) (worked example checked). Promise: limits above zero.
double mixture_index(std::span<const Agent> agents);

// The same for air that holds so much vapour in all, in the proportions of an evaporated mixture. None: some part has no limit.
std::optional<double> mixture_index(const Mixture& mixture, VapourShare vapour);

// What is left of a limit on a long day: (8/h) (24 − h)/16, 1 up to eight hours, 0 from a day without rest.
// Source: Brief and Scala 1975 (formula from memory).
double long_day_factor(Duration shift);

}  // namespace dampward::room_air
