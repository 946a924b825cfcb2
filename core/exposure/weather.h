#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <vector>

#include "core/base/civil_time.h"
#include "core/quantity/quantity.h"
#include "core/quantity/shares.h"
#include "core/quantity/temperature.h"

namespace dampward::exposure {

// One hour outdoors.
struct WeatherHour {
  LocalTime begins;          // local standard time; typical years take each month from another calendar year
  unsigned month = 1;        // 1 to 12, of the date in the file
  unsigned hour_of_day = 0;  // 0 to 23
  Temperature temperature;
  Temperature dew_point;      // never above the temperature
  RelativeHumidity humidity;  // 0 to 1
  Pressure pressure;
};

// Hours the file lacks and nobody can guess: left out of every count.
struct WeatherGap {
  LocalTime from, to;  // begin of the first missing hour, end of the last
  int hours = 0;
};

// Hourly weather of one place as its file tells it, in the file's order, with what was done to make it whole.
struct Weather {
  std::string station;
  std::string kind;                           // EPW, TMY3 CSV or NSRDB CSV
  std::optional<double> latitude, longitude;  // degrees, north and east positive
  std::optional<Length> elevation;
  std::chrono::minutes ahead_of_utc{0};  // local standard time
  std::vector<WeatherHour> hours;
  std::vector<WeatherGap> gaps;
  int filled_hours = 0;         // fillers and gaps of up to 6 h, interpolated
  int clamped_hours = 0;        // humidity above 100 and up to 105 %, taken as 100 %
  int dew_above_dry_hours = 0;  // dew point above the air temperature, taken as equal to it
};

}  // namespace dampward::exposure
