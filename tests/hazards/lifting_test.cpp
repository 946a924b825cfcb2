#include <doctest/doctest.h>

#include "core/hazards/lifting.h"

namespace dampward::hazards {

// One person: 23 kg, NIOSH 94-110. Two: two thirds of the sum. Three: half of it (HSE L23, team handling). A published example of
// that rule: 20 kg alone is about 26.6 kg for two.
TEST_CASE("a team lifts less than the sum of what each could alone") {
  CHECK(team_lifts(1).in(kilogram) == doctest::Approx(23));
  CHECK(team_lifts(2).in(kilogram) == doctest::Approx(30.67).epsilon(0.001));
  CHECK(team_lifts(3).in(kilogram) == doctest::Approx(34.5));
  CHECK(team_lifts(2) / one_person_lifts * 20 == doctest::Approx(26.6).epsilon(0.003));
}

TEST_CASE("as many people lift it as its weight asks for, and beyond three nobody does by hand") {
  CHECK(people_to_lift(22 * kilogram) == 1);
  CHECK(people_to_lift(24 * kilogram) == 2);
  CHECK(people_to_lift(31 * kilogram) == 3);
  CHECK_FALSE(people_to_lift(35 * kilogram).has_value());
}

}  // namespace dampward::hazards
