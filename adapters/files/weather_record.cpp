#include "adapters/files/weather_record.h"

#include <array>
#include <cmath>

#include "core/base/format.h"
#include "core/base/text.h"

namespace dampward::files {
namespace {

// Numbers that stand for "not measured" in one of the kinds, whatever the column.
bool is_filler(double value) {
  constexpr std::array<double, 9> fillers = {999, 999.9, 9999, 9999.9, 99999, 999999, -9900, -9999, -999};
  for (const double filler : fillers) {
    if (value == filler) return true;
  }
  return false;
}

bool stands_for_nothing(std::string_view field) {
  const std::string word = lower_case(trimmed(field));
  return word.empty() || word == "na" || word == "nan";
}

}  // namespace

double WeatherValues::value(std::string_view field, const char* what, const char* unit, double low,
                            double high, bool tenths_filler) const {
  const auto number = to_number(field);
  if (number && *number >= low && *number <= high && !(tenths_filler && *number == 99.9)) return *number;
  if (number ? is_filler(*number) || (tenths_filler && *number == 99.9) : stands_for_nothing(field))
    return missing;
  faults_.add(line_.number, column(field), format("{} \"{}\"", what, trimmed(field).substr(0, 30)),
              format("a number from {} to {} {}", fixed(low, 0), fixed(high, 0), unit));
  return missing;
}

double WeatherValues::temperature(std::string_view field) const {
  return value(field, "temperature", "°C", -90, 70, true);
}

double WeatherValues::dew_point(std::string_view field) const {
  return value(field, "dew point", "°C", -99, 70, true);
}

double WeatherValues::humidity(std::string_view field) const {
  return value(field, "humidity", "% (100 to 105 counts as 100)", 0, 105, false);
}

double WeatherValues::pressure(std::string_view field, double unit) const {
  return unit * value(field, "pressure", unit == 1 ? "Pa" : "hPa", 30000 / unit, 120000 / unit, false);
}

std::optional<int> WeatherValues::whole(std::string_view field, const char* what, int low, int high) const {
  const auto number = to_number(field);
  if (number && *number >= low && *number <= high && *number == std::floor(*number))
    return static_cast<int>(*number);
  faults_.add(line_.number, column(field), format("{} \"{}\"", what, trimmed(field).substr(0, 30)),
              format("a whole number from {} to {}", low, high));
  return std::nullopt;
}

std::optional<Date> WeatherValues::date(int year, int month, int day, std::string_view field) const {
  const Date date{std::chrono::year(year), std::chrono::month(static_cast<unsigned>(month)),
                  std::chrono::day(static_cast<unsigned>(day))};
  if (date.ok()) return date;
  faults_.add(line_.number, column(field), format("day {} of month {} in {}", day, month, year),
              "a day the month has in that year");
  return std::nullopt;
}

int WeatherValues::column(std::string_view field) const {
  return static_cast<int>(field.data() - line_.text.data()) + 1;
}

bool right_length(const WeatherLine& line, std::size_t fields, std::size_t expected, WeatherFaults& faults) {
  if (fields == expected) return true;
  faults.add(line.number, 0, format("a row of {} fields", fields), format("{} fields", expected),
             fields < expected ? "The file may be cut short: fetch it anew." : "");
  return false;
}

}  // namespace dampward::files
