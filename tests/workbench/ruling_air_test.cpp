#include "workbench/detail/ruling_air.h"

#include <doctest/doctest.h>

namespace dampward::workbench::test {
namespace {

using namespace std::chrono;

shop::Site site() {
  shop::Site place;
  place.clock = WallClock(hours(-4));
  return place;
}

records::AirReading reading(const char* time, double celsius, double percent) {
  return {*parse_local_time(time),
          "spray room",
          Temperature::celsius(celsius),
          RelativeHumidity::percent(percent),
          {}};
}

shop::SprayPlace spray() {
  shop::SprayPlace place;
  place.name = "spray room";
  return place;
}

exposure::Climate february(double mean_c, double dew_95_c) {
  exposure::MonthClimate month;
  month.month = 2;
  month.hours = 672;
  month.mean_temperature = Temperature::celsius(mean_c);
  month.temperature_95 = Temperature::celsius(mean_c + 3);
  month.dew_point_95 = Temperature::celsius(dew_95_c);
  exposure::Climate climate;
  climate.months = {month};
  return climate;
}

const Instant start = site().clock.instant(*parse_local_time("2027-02-01 07:00"));

}  // namespace

TEST_CASE("a damp morning's reading rules over a drier climate") {
  const auto climate = february(25, 18);
  const auto air = ruling_air({reading("2027-02-01 06:40", 27, 90)}, &climate, start, site(), spray());
  REQUIRE(air.ok());
  CHECK(air->temperature.celsius() == doctest::Approx(27));
  CHECK(air->humidity.percent() == doctest::Approx(90).epsilon(1e-6));
  CHECK(air->because.find("06:40") != std::string::npos);
}

TEST_CASE("beyond 4 h the month's 95th-percentile dew point rules where it is damper, and the plan says so") {
  const auto climate = february(25, 23);
  const auto air = ruling_air({reading("2027-02-01 06:40", 25, 60)}, &climate, start, site(), spray());
  REQUIRE(air.ok());
  CHECK(air->dew_point.celsius() == doctest::Approx(23));
  CHECK(air->because.find("February") != std::string::npos);
}

TEST_CASE("a dry office does not speak for the spray room, whichever was read last") {
  const auto climate = february(25, 18);
  auto office = reading("2027-02-01 06:50", 22, 40);
  office.where = "office";
  const auto air =
      ruling_air({reading("2027-02-01 06:40", 27, 90), office}, &climate, start, site(), spray());
  REQUIRE(air.ok());
  CHECK(air->temperature.celsius() == doctest::Approx(27));
}

TEST_CASE("units cool in the warmest air and lose their margin in the coolest") {
  const auto climate = february(25, 18);
  const auto air = ruling_air({reading("2027-02-01 06:40", 23, 80)}, &climate, start, site(), spray());
  REQUIRE(air.ok());
  CHECK(air->warmest.celsius() == doctest::Approx(28));
  CHECK(air->coolest.celsius() == doctest::Approx(23));
}

TEST_CASE("a reading older than 4 h, or one from after the start, does not rule") {
  const auto climate = february(25, 20);
  for (const char* time : {"2027-02-01 02:59", "2027-02-01 07:01"}) {
    const auto air = ruling_air({reading(time, 30, 95)}, &climate, start, site(), spray());
    REQUIRE(air.ok());
    CHECK(air->dew_point.celsius() == doctest::Approx(20));
  }
}

TEST_CASE("with neither reading nor climate nothing is planned, and the fault says what to write down") {
  const auto air = ruling_air({}, nullptr, start, site(), spray());
  REQUIRE_FALSE(air.ok());
  CHECK(air.problems().front().place.file == "air.csv");
  CHECK(air.problems().front().next.find("air.csv") != std::string::npos);
}

TEST_CASE("air is never reckoned drier than saturated when its dew point lies above its temperature") {
  const auto climate = february(20, 24);
  const auto air = ruling_air({}, &climate, start, site(), spray());
  REQUIRE(air.ok());
  CHECK(air->temperature >= air->dew_point);
  CHECK(air->humidity.percent() <= 100.0);
}

}  // namespace dampward::workbench::test
