// Two CSV forms of the US National Renewable Energy Laboratory: TMY3 (Wilcox and Marion 2008, NREL/TP-581-43156) and the
// NSRDB's PSM v3 (public documentation).
#include <algorithm>
#include <array>
#include <cmath>

#include "adapters/files/weather_record.h"
#include "core/base/format.h"
#include "core/base/text.h"

namespace dampward::files {
namespace {

std::string at(const std::vector<std::string>& fields, std::size_t i) {
  return i < fields.size() ? fields[i] : "";
}

// The columns of a file by name, in the order in which they stand in a row.
class Columns {
 public:
  Columns(const WeatherLine& heads, std::span<const std::string_view> names, WeatherFaults& faults) {
    const auto fields = head_fields(heads.text);
    length_ = fields.size();
    for (const std::string_view name : names) {
      const auto place = std::find(fields.begin(), fields.end(), name);
      if (place == fields.end()) {
        faults.add(heads.number, 0, format("no column \"{}\"", name),
                   "the heads the laboratory's files have");
      } else {
        places_.push_back({static_cast<std::size_t>(place - fields.begin()), name});
      }
    }
    std::sort(places_.begin(), places_.end());
    for (const auto& [place, name] : places_) wanted_.push_back(place);
    picked_.resize(wanted_.size());
  }

  // Takes the fields of a row; false (and a fault) where it has another length than the heads.
  bool pick(const WeatherLine& line, WeatherFaults& faults) {
    return right_length(line, pick_fields(line.text, wanted_, picked_), length_, faults);
  }
  // Which of the picked fields is this column.
  std::size_t index(std::string_view name) const {
    const auto place =
        std::find_if(places_.begin(), places_.end(), [&](const auto& p) { return p.second == name; });
    return static_cast<std::size_t>(place - places_.begin());
  }
  std::string_view operator[](std::size_t index) const { return picked_[index]; }

 private:
  std::size_t length_ = 0;
  std::vector<std::pair<std::size_t, std::string_view>> places_;
  std::vector<std::size_t> wanted_;
  std::vector<std::string_view> picked_;
};

std::optional<std::chrono::minutes> zone_minutes(const std::string& text) {
  const auto zone = to_number(text);
  if (!zone || std::abs(*zone) > 14) return std::nullopt;
  return std::chrono::minutes(std::lround(60 * *zone));
}

void bad_zone(int line, const std::string& text, WeatherFaults& faults) {
  faults.add(line, 0, format("time zone \"{}\" in the head", text), "hours ahead of UTC, such as 10");
}

void no_rows(const char* kind, WeatherFaults& faults) {
  faults.add(0, 0, format("{} heads without any hour", kind), "hourly rows below the heads",
             "The file was cut short: fetch it anew.");
}

std::string_view second_line(std::string_view text) {
  WeatherLines lines(text.substr(0, 4000));
  lines.next();
  const auto line = lines.next();
  return line ? line->text : std::string_view();
}

}  // namespace

bool is_tmy3(std::string_view text) {
  return second_line(text).starts_with("Date (MM/DD/YYYY)");
}

WeatherRecord read_tmy3(std::string_view text, WeatherFaults& faults) {
  WeatherRecord record;
  exposure::Weather& head = record.head;
  head.kind = "TMY3 CSV";
  WeatherLines lines(text);
  const WeatherLine station = *lines.next(), heads = *lines.next();
  // id,"name",state,time zone,latitude,longitude,elevation m
  const auto about = head_fields(station.text);
  head.station = at(about, 1);
  head.latitude = to_number(at(about, 4));
  head.longitude = to_number(at(about, 5));
  if (const auto elevation = to_number(at(about, 6))) head.elevation = *elevation * metre;
  const auto zone = zone_minutes(at(about, 3));
  if (zone)
    head.ahead_of_utc = *zone;
  else
    bad_zone(station.number, at(about, 3), faults);

  constexpr std::array<std::string_view, 6> names = {"Date (MM/DD/YYYY)", "Time (HH:MM)", "Dry-bulb (C)",
                                                     "Dew-point (C)",     "RHum (%)",     "Pressure (mbar)"};
  Columns columns(heads, names, faults);
  if (!faults.empty()) return record;
  const std::size_t i_date = columns.index(names[0]), i_time = columns.index(names[1]),
                    i_dry = columns.index(names[2]), i_dew = columns.index(names[3]),
                    i_humidity = columns.index(names[4]), i_pressure = columns.index(names[5]);
  record.rows.reserve(8784);
  while (const auto line = lines.next()) {
    if (!columns.pick(*line, faults)) continue;
    const WeatherValues values(*line, faults);
    const std::string_view date = columns[i_date], time = columns[i_time];
    WeatherRow row;
    row.line = line->number;
    row.temperature = values.temperature(columns[i_dry]);
    row.dew_point = values.dew_point(columns[i_dew]);
    row.humidity = values.humidity(columns[i_humidity]);
    row.pressure = values.pressure(columns[i_pressure], 100);
    if (date.size() != 10 || date[2] != '/' || date[5] != '/' || time.size() != 5 || time[2] != ':') {
      faults.add(line->number, values.column(date),
                 format("date and time \"{} {}\"", date.substr(0, 20), time.substr(0, 20)),
                 "MM/DD/YYYY and HH:MM, such as 01/31/1988 and 24:00");
      continue;
    }
    const auto month = values.whole(date.substr(0, 2), "month", 1, 12);
    const auto day = values.whole(date.substr(3, 2), "day", 1, 31);
    const auto year = values.whole(date.substr(6, 4), "year", 1, 9999);
    const auto hour = values.whole(time.substr(0, 2), "hour", 1, 24);
    if (!month || !day || !year || !hour) continue;
    const auto valid = values.date(*year, *month, *day, date);
    if (!valid) continue;
    row.date = *valid;
    row.hour = *hour - 1;  // 01:00 ends the hour that begins at midnight
    record.rows.push_back(row);
  }
  if (record.rows.empty() && faults.empty()) no_rows("TMY3", faults);
  return record;
}

bool is_nsrdb(std::string_view text) {
  return text.starts_with("Source,Location ID");
}

WeatherRecord read_nsrdb(std::string_view text, WeatherFaults& faults) {
  WeatherRecord record;
  exposure::Weather& head = record.head;
  head.kind = "NSRDB CSV";
  record.humidity_from_dew_point = true;
  WeatherLines lines(text);
  const auto keys = lines.next(), about = lines.next(), heads = lines.next();
  if (!about || !heads) {
    no_rows("NSRDB", faults);
    return record;
  }
  const auto names_of = head_fields(keys->text), values_of = head_fields(about->text);
  const auto told = [&](std::string_view key) -> std::string {
    const auto place = std::find(names_of.begin(), names_of.end(), key);
    return place == names_of.end() ? "" : at(values_of, static_cast<std::size_t>(place - names_of.begin()));
  };
  head.station = format("{} {}", told("Source"), told("Location ID"));
  head.latitude = to_number(told("Latitude"));
  head.longitude = to_number(told("Longitude"));
  if (const auto elevation = to_number(told("Elevation"))) head.elevation = *elevation * metre;
  const auto rows_zone = zone_minutes(told("Time Zone")), local_zone = zone_minutes(told("Local Time Zone"));
  if (rows_zone) {
    head.ahead_of_utc = local_zone.value_or(*rows_zone);
    record.shift = std::chrono::duration_cast<std::chrono::hours>(head.ahead_of_utc - *rows_zone);
  } else {
    bad_zone(about->number, told("Time Zone"), faults);
  }
  const auto unit = [&](std::string_view key, std::string_view wanted) {
    const std::string given = lower_case(told(key));
    if (!given.empty() && given != wanted) {
      faults.add(about->number, 0, format("{} \"{}\"", key, given), format("\"{}\"", wanted),
                 "Fetch the file in SI units.");
    }
  };
  unit("Temperature Units", "c");
  unit("Dew Point Units", "c");
  unit("Pressure Units", "mbar");

  constexpr std::array<std::string_view, 7> names = {"Year",      "Month",       "Day",     "Hour",
                                                     "Dew Point", "Temperature", "Pressure"};
  Columns columns(*heads, names, faults);
  if (!faults.empty()) return record;
  std::array<std::size_t, names.size()> i{};
  for (std::size_t k = 0; k < names.size(); ++k) i[k] = columns.index(names[k]);
  record.rows.reserve(8784);
  while (const auto line = lines.next()) {
    if (!columns.pick(*line, faults)) continue;
    const WeatherValues values(*line, faults);
    const auto year = values.whole(columns[i[0]], "year", 1, 9999);
    const auto month = values.whole(columns[i[1]], "month", 1, 12);
    const auto day = values.whole(columns[i[2]], "day", 1, 31);
    const auto hour = values.whole(columns[i[3]], "hour", 0, 23);
    WeatherRow row;
    row.line = line->number;
    row.dew_point = values.dew_point(columns[i[4]]);
    row.temperature = values.temperature(columns[i[5]]);
    row.pressure = values.pressure(columns[i[6]], 100);
    if (!year || !month || !day || !hour) continue;
    const auto date = values.date(*year, *month, *day, columns[i[2]]);
    if (!date) continue;
    row.date = *date;
    row.hour = *hour;  // stamped at its half hour
    record.rows.push_back(row);
  }
  if (record.rows.empty() && faults.empty()) no_rows("NSRDB", faults);
  return record;
}

}  // namespace dampward::files
