#pragma once

#include <limits>
#include <optional>
#include <string>
#include <vector>

#include "adapters/files/weather_lines.h"
#include "core/base/civil_time.h"
#include "core/exposure/weather.h"

namespace dampward::files {

inline constexpr double missing = std::numeric_limits<double>::quiet_NaN();

// One row as the file has it; `missing` where it holds a filler.
struct WeatherRow {
  int line = 0;
  Date date;
  int hour = 0;                                       // 0 to 23: the hour that begins then
  double temperature = missing, dew_point = missing;  // °C
  double humidity = missing;                          // %; 0 to 105
  double pressure = missing;                          // Pa
};

// What a reader found, before it is made whole.
struct WeatherRecord {
  exposure::Weather head;       // everything but the hours and what was done to them
  std::chrono::hours shift{0};  // from the rows' clock to local standard time
  bool humidity_from_dew_point = false;
  struct Period {
    unsigned first_month, first_day, last_month, last_day;
  };
  std::optional<Period> period;  // none: whole years
  std::vector<WeatherRow> rows;
};

// The kinds of file. Each fills `record` from the text and tells `faults` of what it cannot use.
bool is_epw(std::string_view text);
bool is_tmy3(std::string_view text);
bool is_nsrdb(std::string_view text);
WeatherRecord read_epw(std::string_view text, WeatherFaults& faults);
WeatherRecord read_tmy3(std::string_view text, WeatherFaults& faults);
WeatherRecord read_nsrdb(std::string_view text, WeatherFaults& faults);

// What the value fields of a row may hold. Each answers `missing` for a filler and tells `faults` of anything else that
// cannot be.
class WeatherValues {
 public:
  WeatherValues(const WeatherLine& line, WeatherFaults& faults) : line_(line), faults_(faults) {}
  double temperature(std::string_view field) const;            // °C
  double dew_point(std::string_view field) const;              // °C
  double humidity(std::string_view field) const;               // %
  double pressure(std::string_view field, double unit) const;  // Pa, from fields in `unit` Pa
  // A whole number between two bounds.
  std::optional<int> whole(std::string_view field, const char* what, int low, int high) const;
  std::optional<Date> date(int year, int month, int day, std::string_view field) const;
  int column(std::string_view field) const;  // from 1

 private:
  double value(std::string_view field, const char* what, const char* unit, double low, double high,
               bool tenths_filler) const;

  const WeatherLine& line_;
  WeatherFaults& faults_;
};

// Tells `faults` of a row with another number of fields than it should have; true where it is right.
bool right_length(const WeatherLine& line, std::size_t fields, std::size_t expected, WeatherFaults& faults);

// Puts missing hours in, interpolates short runs, leaves long ones out, and turns rows into weather.
exposure::Weather mend(WeatherRecord record, WeatherFaults& faults);

}  // namespace dampward::files
