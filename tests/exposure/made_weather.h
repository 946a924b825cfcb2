#pragma once

#include <functional>

#include "core/exposure/weather.h"
#include "core/moist_air/humid_air.h"

namespace dampward::exposure {

// A made record: as many hours from 1 January on, each with the air that `air` gives for its number from 0.
inline Weather made_weather(int hours, const std::function<moist_air::HumidAir(int)>& air) {
  constexpr int days[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
  Weather weather;
  weather.station = "Tamarin Delta";
  for (int i = 0; i < hours; ++i) {
    int day = i / 24 % 365;
    unsigned month = 1;
    for (; day >= days[month - 1]; ++month) day -= days[month - 1];
    const moist_air::HumidAir now = air(i);
    WeatherHour hour;
    hour.begins = LocalTime(std::chrono::hours(i));
    hour.month = month;
    hour.hour_of_day = static_cast<unsigned>(i % 24);
    hour.temperature = now.temperature;
    hour.dew_point = moist_air::dew_point(now);
    hour.humidity = now.humidity;
    hour.pressure = now.pressure;
    weather.hours.push_back(hour);
  }
  return weather;
}

inline Weather steady_weather(int hours, double celsius, double percent) {
  return made_weather(hours, [=](int) {
    return moist_air::HumidAir{Temperature::celsius(celsius), RelativeHumidity::percent(percent)};
  });
}

}  // namespace dampward::exposure
