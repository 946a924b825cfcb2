#pragma once

#include <span>
#include <string_view>

#include "core/base/result.h"
#include "core/quantity/figure.h"
#include "core/quantity/quantity.h"

namespace dampward::coating {

// A cup with a hole: the time it takes to drain tells the viscosity, at 25 °C, for liquids that flow like water (Newtonian),
// within its drain times only. Two cups never compare well: reproducibility of the Zahn cups is 33 % (read, on ASTM D4212).
struct FlowCup {
  std::string_view id;         // "ford_4"
  std::string_view name;       // "Ford 4"
  double per_second;           // ν = a t − a b − c / t in mm²/s, t in s; this is a
  double dead_time;            // b
  double inertia;              // c
  Duration shortest, longest;  // drain times it is meant for
  Mark mark;
  std::string_view source;
};

std::span<const FlowCup> flow_cups();
// nullptr: no such cup.
const FlowCup* find_cup(std::string_view id);

// Problem: the drain time lies outside the cup's range, where the formula means nothing.
Result<KinematicViscosity> viscosity(const FlowCup& cup, Duration drain);

// Problem: the liquid would drain faster or slower than the cup is meant for.
Result<Duration> drain_time(const FlowCup& cup, KinematicViscosity viscosity);

}  // namespace dampward::coating
