#include "workbench/detail/ruling_air.h"

#include <algorithm>

#include "core/base/format.h"
#include "core/moist_air/humid_air.h"

namespace dampward::workbench {
namespace {

// The latest reading that still rules at `from`; null where none does.
const records::AirReading* ruling_reading(const std::vector<records::AirReading>& readings, Instant from,
                                          const WallClock& clock) {
  const records::AirReading* latest = nullptr;
  for (const auto& reading : readings) {
    const Instant taken = clock.instant(reading.time);
    if (taken > from || from - taken > reading_rules_for) continue;
    if (latest == nullptr || reading.time > latest->time) latest = &reading;
  }
  return latest;
}

// The damper of the months the plan touches; null where the climate knows none of them.
const exposure::MonthClimate* damper_month(const exposure::Climate& climate, Instant from, const WallClock& clock) {
  const auto month_of = [&](Instant t) {
    return static_cast<unsigned>(Date(std::chrono::floor<std::chrono::days>(clock.local(t))).month());
  };
  const exposure::MonthClimate* damper = nullptr;
  for (unsigned month : {month_of(from), month_of(from + plan_reaches)}) {
    for (const auto& candidate : climate.months) {
      if (candidate.month != month) continue;
      if (damper == nullptr || candidate.dew_point_95 > damper->dew_point_95) damper = &candidate;
    }
  }
  return damper;
}

std::string month_name(unsigned month) {
  static constexpr const char* names[] = {"January", "February", "March",     "April",   "May",      "June",
                                          "July",    "August",   "September", "October", "November", "December"};
  return names[month - 1];
}

RulingAir with_dew_point(Temperature air, Temperature dew_point, Pressure pressure, std::string because) {
  // Air is never colder than its dew point: saturated then.
  const Temperature temperature = std::max(air, dew_point);
  const auto state = moist_air::from_dew_point(temperature, dew_point, pressure);
  const double humidity = std::min(state.humidity.fraction(), 1.0);
  return {temperature, RelativeHumidity::fraction(humidity), dew_point, std::move(because)};
}

}  // namespace

Result<RulingAir> ruling_air(const std::vector<records::AirReading>& readings, const exposure::Climate* climate,
                             Instant from, const shop::Site& site) {
  const Pressure pressure = moist_air::standard_pressure(site.altitude);
  const records::AirReading* reading = ruling_reading(readings, from, site.clock);
  const exposure::MonthClimate* month = climate == nullptr ? nullptr : damper_month(*climate, from, site.clock);
  if (reading == nullptr && month == nullptr) {
    return Problem{{"air.csv"},
                   "no reading of the shop's air within 4 h before the start, and no weather file for that month",
                   "a line with time, place, temperature and humidity read in the shop that day",
                   "Add the reading to air.csv, or name a weather file in site.toml (weather = \"…\")."};
  }
  const auto dew_of = [&](const records::AirReading& r) {
    return moist_air::dew_point({r.temperature, r.humidity, pressure});
  };
  if (month == nullptr) {
    return with_dew_point(reading->temperature, dew_of(*reading), pressure,
                          format("reading of {} in the {}; it rules for 4 h, read again after that",
                                 clock_text(reading->time), reading->where));
  }
  const std::string climate_words =
      format("95th-percentile dew point of {} ({} °C)", month_name(month->month), fixed(month->dew_point_95.celsius(), 1));
  if (reading == nullptr) {
    return with_dew_point(month->mean_temperature, month->dew_point_95, pressure,
                          "no reading of the last 4 h, so the " + climate_words + " rules");
  }
  const Temperature dew = dew_of(*reading);
  // A morning's reading is cooler than the day: a warmer room makes every unit wait longer for the gun.
  const Temperature warmer = std::max(reading->temperature, month->mean_temperature);
  const std::string read_words =
      format("the reading of {} ({} °C dew point)", clock_text(reading->time), fixed(dew.celsius(), 1));
  if (dew >= month->dew_point_95) {
    return with_dew_point(warmer, dew, pressure,
                          read_words + " rules for 4 h and is damper than the " + climate_words + ", so it rules beyond too");
  }
  return with_dew_point(warmer, month->dew_point_95, pressure,
                        read_words + " rules for 4 h; beyond, the damper " + climate_words + " rules");
}

}  // namespace dampward::workbench
