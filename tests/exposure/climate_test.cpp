#include <doctest/doctest.h>

#include <cmath>

#include "core/exposure/climate.h"
#include "tests/exposure/made_weather.h"

using namespace dampward;
using namespace dampward::exposure;
using moist_air::HumidAir;

TEST_CASE("an hour is wet above 80 % and above 0 °C, at neither bound") {
  // ISO 9223:2012, time of wetness.
  CHECK(climate_of(steady_weather(10, 20, 80.01)).wet_hours == 10);
  CHECK(climate_of(steady_weather(10, 20, 80)).wet_hours == 0);
  CHECK(climate_of(steady_weather(10, 0, 95)).wet_hours == 0);
  CHECK(climate_of(steady_weather(10, 0.1, 95)).wet_hours == 10);
}

TEST_CASE("the month's 95th percentile of dew point leaves one hour in twenty above it") {
  const Weather weather = made_weather(744, [](int i) {
    return HumidAir{Temperature::celsius(30), RelativeHumidity::percent(40 + 50.0 * i / 743)};
  });
  const Climate climate = climate_of(weather);
  const auto dew = monthly_dew_point_95(climate, 1);
  REQUIRE(dew.has_value());
  int above = 0;
  for (const WeatherHour& hour : weather.hours) above += hour.dew_point > *dew;
  CHECK(above == 37);  // 744 - ceil(0.95 * 744)
  CHECK_FALSE(monthly_dew_point_95(climate, 2).has_value());
}

TEST_CASE("the worst months are the wettest, at most three, and none in a desert") {
  const Weather weather = made_weather(8760, [](int i) {
    const bool monsoon = i >= 4344 && i < 6552;  // July to September
    return HumidAir{Temperature::celsius(30), RelativeHumidity::percent(monsoon && i % 24 < 12 ? 90 : 50)};
  });
  CHECK(climate_of(weather).worst_months == std::vector<unsigned>{7, 8, 9});
  CHECK(climate_of(steady_weather(8760, 35, 20)).worst_months.empty());
}

TEST_CASE("means of a month and of the year weigh every hour alike") {
  const Weather weather = made_weather(31 * 24 + 28 * 24, [](int i) {
    return HumidAir{Temperature::celsius(i < 31 * 24 ? 10 : 20), RelativeHumidity::percent(50)};
  });
  const Climate climate = climate_of(weather);
  CHECK(climate.months[0].mean_temperature.celsius() == doctest::Approx(10));
  CHECK(climate.months[1].mean_temperature.celsius() == doctest::Approx(20));
  CHECK(climate.mean_temperature.celsius() == doctest::Approx((31.0 * 10 + 28 * 20) / 59));
}
