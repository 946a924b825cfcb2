#pragma once

#include <compare>
#include <cstdint>
#include <string>
#include <vector>

#include "core/line/answer.h"

namespace dampward::line {

// How good a plan that keeps every rule is. The terms in their order of weight: an earlier one outweighs all that follow. Less is better.
struct Objective {
  std::int64_t left_out = 0;    // units without a place
  std::int64_t lateness = 0;    // minutes over the due minute times the unit's weight, summed
  Minute finish = 0;            // end of the last operation
  Minute ovens = 0;             // minutes that ovens are taken, summed
  std::int64_t hand_overs = 0;  // times a unit passes from hands to other hands

  friend auto operator<=>(const Objective&, const Objective&) = default;
};

Objective objective_of(const Problem& problem, const Answer& answer);

// What no plan of all units can be below, whatever the order: gaps, shifts and lengths alone, and each skill's work against the
// hours of those who have it. People are shared, places and windows are not asked. Left out and hand-overs: nought.
// Promise: the problem has no faults.
// `left_out`: units that are not asked, because they have no place anyway.
Objective at_best(const Problem& problem, const std::vector<std::string>& left_out = {});

}  // namespace dampward::line
