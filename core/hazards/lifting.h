#pragma once

#include <optional>

#include "core/quantity/quantity.h"

namespace dampward::hazards {

// The heaviest thing one person lifts at best: close to the body, at knuckle height, with good handles.
// Source: the load constant of the revised lifting equation, NIOSH 94-110 (1994), 23 kg (51 lb); read in a handbook's chapter on it.
inline constexpr Mass one_person_lifts = 23 * kilogram;

// The largest team that guidance gives a figure for; of more than four it says that they seldom work well together.
inline constexpr int largest_team = 3;

// What a team of 1 to `largest_team` lifts: two people two thirds of the sum of what each could alone, three half of it.
// Source: HSE guidance L23 on the Manual Handling Operations Regulations 1992, team handling (read as quoted elsewhere). Promise of
// the caller: the team is within that range.
Mass team_lifts(int people);

// The fewest people who lift it by hand; nothing where no team does and only a lifting aid will.
std::optional<int> people_to_lift(Mass mass);

}  // namespace dampward::hazards
