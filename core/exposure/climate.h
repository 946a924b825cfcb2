#pragma once

#include <array>
#include <optional>
#include <vector>

#include "core/exposure/weather.h"

namespace dampward::exposure {

// What a month of the record is like outdoors; all years of the record together.
struct MonthClimate {
  unsigned month = 1;
  int hours = 0;
  Temperature mean_temperature;
  Temperature temperature_95;  // 95 % of the month's hours are at or below it
  RelativeHumidity mean_humidity;
  Temperature dew_point_95;  // 95 % of the month's hours are at or below it
  RelativeHumidity humidity_95;
  int wet_hours = 0;
};

struct Climate {
  Temperature mean_temperature;
  RelativeHumidity mean_humidity;
  int wet_hours = 0;
  std::vector<MonthClimate> months;    // those the record has, January first
  std::vector<unsigned> worst_months;  // up to three, wettest first; none without a wet hour
};

// A wet hour: humidity above 80 % and temperature above 0 °C, in the outdoor humidity column.
// Source: ISO 9223:2012, time of wetness (clause quoted by a public copy, read).
bool is_wet(const WeatherHour& hour);

// Promise: the record has at least one hour.
Climate climate_of(const Weather& weather);

// The month's 95th percentile of dew point: what a plan counts on where nobody read the air today. Nearest rank, rounded up.
// Nothing for a month the record lacks.
std::optional<Temperature> monthly_dew_point_95(const Climate& climate, unsigned month);

}  // namespace dampward::exposure
