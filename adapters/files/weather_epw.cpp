// EnergyPlus weather files. Form: EnergyPlus "Auxiliary Programs", weather data dictionary (public documentation).
#include <array>
#include <cmath>

#include "adapters/files/weather_record.h"
#include "core/base/format.h"
#include "core/base/text.h"

namespace dampward::files {
namespace {

// Field numbers of a data row.
constexpr std::array<std::size_t, 8> wanted = {0, 1, 2, 3, 6, 7, 8, 9};
constexpr std::size_t fewest_fields = 32,
                      usual_fields = 35;  // older files lack albedo and liquid precipitation

std::string at(const std::vector<std::string>& fields, std::size_t i) {
  return i < fields.size() ? fields[i] : "";
}

// LOCATION,city,state,country,source,WMO,latitude,longitude,time zone,elevation
void read_location(const WeatherLine& line, exposure::Weather& head, WeatherFaults& faults) {
  const auto fields = head_fields(line.text);
  head.station = at(fields, 1);
  head.latitude = to_number(at(fields, 6));
  head.longitude = to_number(at(fields, 7));
  if (const auto elevation = to_number(at(fields, 9))) head.elevation = *elevation * metre;
  const auto zone = to_number(at(fields, 8));
  if (zone && std::abs(*zone) <= 14) {
    head.ahead_of_utc = std::chrono::minutes(std::lround(60 * *zone));
  } else {
    faults.add(line.number, 0, format("time zone \"{}\" in the LOCATION line", at(fields, 8)),
               "hours ahead of UTC, such as -4.0", "The head may be cut short: fetch the file anew.");
  }
}

// "1/ 1" or "12/31/2012".
std::optional<std::pair<unsigned, unsigned>> month_and_day(std::string_view text) {
  const auto pieces = split(text, '/');
  if (pieces.size() < 2) return std::nullopt;
  const auto month = to_number(pieces[0]), day = to_number(pieces[1]);
  if (!month || !day || *month < 1 || *month > 12 || *day < 1 || *day > 31) return std::nullopt;
  return std::pair{static_cast<unsigned>(*month), static_cast<unsigned>(*day)};
}

// DATA PERIODS,periods,records an hour,name,first weekday,first day,last day
void read_period(const WeatherLine& line, WeatherRecord& record, WeatherFaults& faults) {
  const auto fields = head_fields(line.text);
  if (at(fields, 2) != "1") {
    faults.add(line.number, 0, format("{} records an hour in the DATA PERIODS line", at(fields, 2)),
               "1: an hourly file");
  }
  const auto first = month_and_day(at(fields, 5)), last = month_and_day(at(fields, 6));
  if (at(fields, 1) == "1" && first && last) {
    record.period = WeatherRecord::Period{first->first, first->second, last->first, last->second};
  }
}

std::optional<WeatherRow> read_row(const WeatherLine& line, std::span<const std::string_view> fields,
                                   WeatherFaults& faults) {
  const WeatherValues values(line, faults);
  const auto year = values.whole(fields[0], "year", 1, 9999);
  const auto month = values.whole(fields[1], "month", 1, 12);
  const auto day = values.whole(fields[2], "day", 1, 31);
  const auto hour = values.whole(fields[3], "hour", 1, 24);
  WeatherRow row;
  row.line = line.number;
  row.temperature = values.temperature(fields[4]);
  row.dew_point = values.dew_point(fields[5]);
  row.humidity = values.humidity(fields[6]);
  row.pressure = values.pressure(fields[7], 1);
  if (!year || !month || !day || !hour) return std::nullopt;
  const auto date = values.date(*year, *month, *day, fields[2]);
  if (!date) return std::nullopt;
  row.date = *date;
  row.hour = *hour - 1;  // hour 1 is the one that begins at midnight
  return row;
}

}  // namespace

bool is_epw(std::string_view text) {
  return text.starts_with("LOCATION,");
}

WeatherRecord read_epw(std::string_view text, WeatherFaults& faults) {
  WeatherRecord record;
  record.head.kind = "EPW";
  WeatherLines lines(text);
  bool in_rows = false;
  std::size_t length = 0;
  std::array<std::string_view, wanted.size()> fields;
  while (const auto line = lines.next()) {
    if (in_rows) {
      const std::size_t found = pick_fields(line->text, wanted, fields);
      if (length == 0) length = found >= fewest_fields && found < usual_fields ? found : usual_fields;
      if (!right_length(*line, found, length, faults)) continue;
      if (const auto row = read_row(*line, fields, faults)) record.rows.push_back(*row);
    } else if (line->text.starts_with("LOCATION")) {
      read_location(*line, record.head, faults);
    } else if (line->text.starts_with("DATA PERIODS")) {
      read_period(*line, record, faults);
      in_rows = true;
      record.rows.reserve(8784);
    }
  }
  if (!in_rows) {
    faults.add(0, 0, "an EPW head without its DATA PERIODS line", "eight head lines, then hourly rows",
               "The file was cut short: fetch it anew.");
  } else if (record.rows.empty() && faults.empty()) {
    faults.add(0, 0, "an EPW head without any hour", "hourly rows after the DATA PERIODS line",
               "The file was cut short: fetch it anew.");
  }
  return record;
}

}  // namespace dampward::files
