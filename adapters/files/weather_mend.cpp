#include <algorithm>
#include <cmath>

#include "adapters/files/weather_record.h"
#include "core/base/format.h"
#include "core/moist_air/atmosphere.h"
#include "core/moist_air/humid_air.h"
#include "core/moist_air/saturation.h"

namespace dampward::files {
namespace {

using exposure::Weather;
using exposure::WeatherHour;
using std::chrono::floor;
using std::chrono::hours;
using std::chrono::local_days;

constexpr int longest_filled = 6;  // h
constexpr int hours_of_year = 8760;

bool is_leap_day(Date date) {
  return date.month() == std::chrono::February && date.day() == std::chrono::day(29);
}

// Hours since 1 January as if every year had the leap day, or as if none had.
int hour_of_year(const WeatherRow& row, bool with_leap_day) {
  constexpr int days_before[] = {0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334};
  const auto month = static_cast<unsigned>(row.date.month());
  const int days = days_before[month - 1] + static_cast<int>(static_cast<unsigned>(row.date.day())) - 1 +
                   (with_leap_day && month > 2 ? 1 : 0);
  return 24 * days + row.hour;
}

// Hours from one row to the next on the calendar. Typical years take each month from another year, so years are not
// compared; a step over 29 February is no gap. Negative for a step back; across New Year it counts on.
int step_between(const WeatherRow& from, const WeatherRow& to) {
  const bool leap = is_leap_day(from.date) || is_leap_day(to.date);
  const int step = hour_of_year(to, leap) - hour_of_year(from, leap);
  const int year = leap ? hours_of_year + 24 : hours_of_year;
  return step < -year / 2 ? step + year : step;
}

LocalTime begin_of(const WeatherRow& row) {
  return local_days(row.date) + hours(row.hour);
}

std::string stamp(const WeatherRow& row) {
  return format("{} {:02}:00", iso_text(row.date), row.hour);
}

// The row `count` hours after another, with nothing in it.
WeatherRow empty_after(const WeatherRow& row, int count) {
  const LocalTime begins = begin_of(row) + hours(count);
  const local_days date = floor<std::chrono::days>(begins);
  WeatherRow empty;
  empty.line = row.line;
  empty.date = Date(date);
  empty.hour = static_cast<int>(std::chrono::duration_cast<hours>(begins - date).count());
  return empty;
}

// The rows with every absent hour put in.
std::vector<WeatherRow> complete(std::vector<WeatherRow> rows, WeatherFaults& faults) {
  std::vector<WeatherRow> all;
  std::size_t whole = 1;
  while (whole < rows.size() && step_between(rows[whole - 1], rows[whole]) == 1) ++whole;
  if (whole == rows.size()) return rows;
  all.assign(rows.begin(), rows.begin() + static_cast<std::ptrdiff_t>(whole));
  for (std::size_t i = whole; i < rows.size(); ++i) {
    const WeatherRow last = all.back();
    const int step = step_between(last, rows[i]);
    if (step <= 0) {
      faults.add(rows[i].line, 0,
                 step == 0 ? format("the hour {} a second time", stamp(last))
                           : format("the hour {} after {}", stamp(rows[i]), stamp(last)),
                 "one row for each hour, in order",
                 step == 0 ? "If the file is half-hourly, fetch the hourly one." : "");
      continue;
    }
    for (int missed = 1; missed < step; ++missed) all.push_back(empty_after(last, missed));
    all.push_back(rows[i]);
  }
  return all;
}

// A record that does not reach the end of its period, or does not start at its beginning, was cut.
void check_ends(const WeatherRecord& record, WeatherFaults& faults) {
  const WeatherRow &first = record.rows.front(), &last = record.rows.back();
  const auto is = [](const WeatherRow& row, unsigned month, unsigned day_of_month, int hour) {
    return row.date.month() == std::chrono::month(month) &&
           row.date.day() == std::chrono::day(day_of_month) && row.hour == hour;
  };
  const std::string next = "The file was cut, or saved halfway: fetch it anew.";
  if (record.period) {
    const auto& period = *record.period;
    if (!is(first, period.first_month, period.first_day, 0)) {
      faults.add(first.line, 0, format("the first hour {}", stamp(first)),
                 format("the record to begin on day {} of month {}, as its head says", period.first_day,
                        period.first_month),
                 next);
    }
    if (!is(last, period.last_month, period.last_day, 23)) {
      faults.add(last.line, 0, format("the last hour {}", stamp(last)),
                 format("the record to run to the end of day {} of month {}, as its head says",
                        period.last_day, period.last_month),
                 next);
    }
  } else if (const int step = step_between(last, first); step != 1) {
    faults.add(last.line, 0, format("hours from {} to {}", stamp(first), stamp(last)),
               "hours for whole years", next);
  }
}

bool lacks(const WeatherRow& row, bool humidity_from_dew_point) {
  return std::isnan(row.temperature) || std::isnan(humidity_from_dew_point ? row.dew_point : row.humidity);
}

// Fills rows first to last (past the end) on a straight line between their neighbours; at an end, with the one there is.
void interpolate(std::vector<WeatherRow>& rows, std::size_t first, std::size_t last) {
  const WeatherRow* before = first > 0 ? &rows[first - 1] : nullptr;
  const WeatherRow* after = last < rows.size() ? &rows[last] : nullptr;
  const WeatherRow &low = before ? *before : *after, &high = after ? *after : *before;
  for (std::size_t i = first; i < last; ++i) {
    const double share = static_cast<double>(i - first + 1) / static_cast<double>(last - first + 1);
    const auto fill = [&](double WeatherRow::* value) {
      if (std::isnan(rows[i].*value)) rows[i].*value = std::lerp(low.*value, high.*value, share);
    };
    fill(&WeatherRow::temperature);
    fill(&WeatherRow::dew_point);
    fill(&WeatherRow::humidity);
    fill(&WeatherRow::pressure);
  }
}

WeatherHour weather_hour(const WeatherRow& row, const WeatherRecord& record, Pressure standard) {
  WeatherHour hour;
  hour.begins = begin_of(row) + record.shift;
  if (record.shift == hours(0)) {
    hour.month = static_cast<unsigned>(row.date.month());
    hour.hour_of_day = static_cast<unsigned>(row.hour);
  } else {
    const local_days date = floor<std::chrono::days>(hour.begins);
    hour.month = static_cast<unsigned>(Date(date).month());
    hour.hour_of_day = static_cast<unsigned>(std::chrono::duration_cast<hours>(hour.begins - date).count());
  }
  hour.temperature = Temperature::celsius(row.temperature);
  hour.pressure = std::isnan(row.pressure) ? standard : row.pressure * pascal;
  if (record.humidity_from_dew_point) {
    hour.dew_point = std::min(Temperature::celsius(row.dew_point), hour.temperature);
    hour.humidity = moist_air::from_dew_point(hour.temperature, hour.dew_point, hour.pressure).humidity;
  } else {
    hour.humidity = RelativeHumidity::percent(std::min(row.humidity, 100.0));
    hour.dew_point = std::isnan(row.dew_point)
                         ? moist_air::dew_point({hour.temperature, hour.humidity, hour.pressure})
                         : Temperature::celsius(row.dew_point);
    hour.dew_point = std::min(hour.dew_point, hour.temperature);
  }
  return hour;
}

}  // namespace

Weather mend(WeatherRecord record, WeatherFaults& faults) {
  Weather weather = std::move(record.head);
  if (record.rows.empty()) return weather;
  check_ends(record, faults);
  std::vector<WeatherRow> rows = complete(std::move(record.rows), faults);
  if (!faults.empty()) return weather;

  const Pressure standard = moist_air::standard_pressure(weather.elevation.value_or(0 * metre));
  for (const WeatherRow& row : rows) {
    if (row.humidity > 100) ++weather.clamped_hours;
    if (row.dew_point > row.temperature) ++weather.dew_above_dry_hours;
  }
  weather.hours.reserve(rows.size());
  for (std::size_t i = 0; i < rows.size();) {
    if (!lacks(rows[i], record.humidity_from_dew_point)) {
      if (std::isnan(rows[i].dew_point)) ++weather.filled_hours;
      weather.hours.push_back(weather_hour(rows[i++], record, standard));
      continue;
    }
    std::size_t end = i;
    while (end < rows.size() && lacks(rows[end], record.humidity_from_dew_point)) ++end;
    const int length = static_cast<int>(end - i);
    if (length > longest_filled) {
      weather.gaps.push_back(
          {begin_of(rows[i]) + record.shift, begin_of(rows[end - 1]) + record.shift + hours(1), length});
    } else if (i > 0 || end < rows.size()) {
      interpolate(rows, i, end);
      weather.filled_hours += length;
      for (std::size_t k = i; k < end; ++k) weather.hours.push_back(weather_hour(rows[k], record, standard));
    }
    i = end;
  }
  if (weather.hours.empty()) {
    faults.add(0, 0, "fillers in every row", "measured temperature and humidity",
               "Take another station or year.");
  }
  return weather;
}

}  // namespace dampward::files
