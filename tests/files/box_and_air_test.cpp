#include <doctest/doctest.h>

#include "adapters/files/quantity_text.h"

namespace dampward::files {

using doctest::Approx;

TEST_CASE("a box is three sides whose unit stands after the last, or after each") {
  for (const char* written : {"4 x 3 x 2.5 m", "4x3x2.5m", "4 m × 300 cm × 2500 mm"}) {
    INFO(written);
    const auto box = box_from_text(written);
    REQUIRE(box.ok());
    CHECK((*box)[0].in(metre) == Approx(4));
    CHECK((*box)[1].in(metre) == Approx(3));
    CHECK((*box)[2].in(metre) == Approx(2.5));
  }
  CHECK((*box_from_text("13 x 10 x 8 ft"))[0].in(foot) == Approx(13));
}

TEST_CASE("a box with a side missing, of zero or without unit is no box") {
  for (const char* written :
       {"", "4 x 3 m", "4 x 0 x 2 m", "4 x 3 x 2", "4 x -3 x 2 m", "a x b x c m", "4 x 3 x 2 x 1 m"}) {
    INFO(written);
    CHECK_FALSE(box_from_text(written).ok());
  }
}

TEST_CASE("the air is a temperature and a humidity, in either scale, with or without a comma") {
  for (const char* written : {"32 C 85 %", "32 °C, 85 %", "89.6 F 85%"}) {
    INFO(written);
    const auto air = air_from_text(written);
    REQUIRE(air.ok());
    CHECK(air->temperature.celsius() == Approx(32));
    CHECK(air->humidity.percent() == Approx(85));
  }
  for (const char* written : {"", "32 C", "85 %", "32 85", "32 C 185 %", "C %"}) {
    INFO(written);
    CHECK_FALSE(air_from_text(written).ok());
  }
}

}  // namespace dampward::files
