#include "core/hazards/lifting.h"

#include "core/base/promise.h"

namespace dampward::hazards {

Mass team_lifts(int people) {
  DAMPWARD_PROMISE(people >= 1 && people <= largest_team, "teams have figures for one to three people");
  constexpr double share[] = {1.0, 2.0 / 3.0, 0.5};
  return share[people - 1] * people * one_person_lifts;
}

std::optional<int> people_to_lift(Mass mass) {
  for (int people = 1; people <= largest_team; ++people) {
    if (mass <= team_lifts(people)) return people;
  }
  return std::nullopt;
}

}  // namespace dampward::hazards
