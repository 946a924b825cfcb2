#include "workbench/detail/ruling_air.h"

#include <algorithm>

#include "core/base/format.h"
#include "core/base/text.h"
#include "core/moist_air/humid_air.h"

namespace dampward::workbench {
namespace {

bool same_place(const std::string& a, const std::string& b) {
  return !a.empty() && lower_case(trimmed(a)) == lower_case(trimmed(b));
}

// The latest reading of the spray place that still rules at `from`; else the dampest of any place that does; else null.
const records::AirReading* ruling_reading(const std::vector<records::AirReading>& readings, Instant from,
                                          const WallClock& clock, const shop::SprayPlace& spray,
                                          Pressure pressure) {
  const records::AirReading* at_the_work = nullptr;
  const records::AirReading* dampest = nullptr;
  const auto dew = [&](const records::AirReading& r) {
    return moist_air::dew_point({r.temperature, r.humidity, pressure});
  };
  for (const auto& reading : readings) {
    const Instant taken = clock.instant(reading.time);
    if (taken > from || from - taken > reading_rules_for) continue;
    if (same_place(reading.where, spray.name) || same_place(reading.where, spray.room)) {
      if (at_the_work == nullptr || reading.time > at_the_work->time) at_the_work = &reading;
    }
    if (dampest == nullptr || dew(reading) > dew(*dampest)) dampest = &reading;
  }
  return at_the_work != nullptr ? at_the_work : dampest;
}

// The damper of the months the plan touches; null where the climate knows none of them.
const exposure::MonthClimate* damper_month(const exposure::Climate& climate, Instant from,
                                           const WallClock& clock) {
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
  static constexpr const char* names[] = {"January",   "February", "March",    "April",
                                          "May",       "June",     "July",     "August",
                                          "September", "October",  "November", "December"};
  return names[month - 1];
}

// Air at one temperature with this dew point; never colder than the dew point, because it is saturated then.
RulingAir air_of(Temperature temperature, Temperature dew_point, Temperature warmest, Temperature coolest,
                 Pressure pressure, std::string because) {
  RulingAir air;
  air.temperature = std::max(temperature, dew_point);
  const auto state = moist_air::from_dew_point(air.temperature, dew_point, pressure);
  air.humidity = RelativeHumidity::fraction(std::min(state.humidity.fraction(), 1.0));
  air.dew_point = dew_point;
  air.warmest = std::max(warmest, air.temperature);
  air.coolest = std::max(std::min(coolest, air.temperature), dew_point);
  air.because = std::move(because);
  return air;
}

}  // namespace

RulingAir dried(const RulingAir& air, const shop::SprayPlace& spray, Pressure pressure) {
  if (!spray.dried_to) return air;
  RulingAir dry = air;
  dry.dew_point = std::min(air.dew_point, moist_air::dew_point({air.warmest, *spray.dried_to, pressure}));
  dry.humidity = std::min(air.humidity, *spray.dried_to);
  return dry;
}

Result<RulingAir> ruling_air(const std::vector<records::AirReading>& readings,
                             const exposure::Climate* climate, Instant from, const shop::Site& site,
                             const shop::SprayPlace& spray) {
  const Pressure pressure = moist_air::standard_pressure(site.altitude);
  const records::AirReading* reading = ruling_reading(readings, from, site.clock, spray, pressure);
  const exposure::MonthClimate* month =
      climate == nullptr ? nullptr : damper_month(*climate, from, site.clock);
  if (reading == nullptr && month == nullptr) {
    return Problem{
        {"air.csv"},
        "no reading of the shop's air within 4 h before the start, and no weather file for that month",
        "a line with time, place, temperature and humidity read in the shop that day",
        "Add the reading to air.csv, or name a weather file in site.toml (weather = \"…\")."};
  }
  if (reading == nullptr) {
    return air_of(month->mean_temperature, month->dew_point_95, month->temperature_95,
                  month->mean_temperature, pressure,
                  format("no reading of the last 4 h, so {}'s 95th-percentile dew point rules",
                         month_name(month->month)));
  }
  const Temperature dew = moist_air::dew_point({reading->temperature, reading->humidity, pressure});
  const std::string read = format("{} reading of {}", reading->where, clock_text(reading->time));
  if (month == nullptr) {
    RulingAir air = air_of(reading->temperature, dew, reading->temperature, reading->temperature, pressure,
                           "the " + read);
    air.one_reading = true;
    return air;
  }
  const Temperature working = std::max(reading->temperature, month->mean_temperature);
  const Temperature coolest = std::min(reading->temperature, month->mean_temperature);
  if (dew >= month->dew_point_95) {
    return air_of(
        working, dew, month->temperature_95, coolest, pressure,
        format("the {} rules for 4 h and is damper than {}'s 95th percentile, so it rules beyond too", read,
               month_name(month->month)));
  }
  return air_of(working, month->dew_point_95, month->temperature_95, coolest, pressure,
                format("the {} rules for 4 h; beyond it the damper 95th-percentile dew point of {}", read,
                       month_name(month->month)));
}

}  // namespace dampward::workbench
