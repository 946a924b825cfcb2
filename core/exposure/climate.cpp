#include "core/exposure/climate.h"

#include <algorithm>

#include "core/base/promise.h"
#include "core/exposure/detail/percentile.h"

namespace dampward::exposure {

bool is_wet(const WeatherHour& hour) {
  return hour.humidity > RelativeHumidity::percent(80) && hour.temperature > Temperature::celsius(0);
}

Climate climate_of(const Weather& weather) {
  DAMPWARD_PROMISE(!weather.hours.empty(), "a climate is asked of weather with at least one hour");
  struct Sums {
    double temperature = 0, humidity = 0;  // °C, fraction
    std::vector<Temperature> temperatures, dew_points;
    std::vector<RelativeHumidity> humidities;
    int wet_hours = 0;
  };
  std::array<Sums, 12> sums;
  for (const WeatherHour& hour : weather.hours) {
    Sums& month = sums[hour.month - 1];
    month.temperature += hour.temperature.celsius();
    month.humidity += hour.humidity.fraction();
    month.temperatures.push_back(hour.temperature);
    month.dew_points.push_back(hour.dew_point);
    month.humidities.push_back(hour.humidity);
    if (is_wet(hour)) ++month.wet_hours;
  }

  Climate climate;
  double temperature = 0, humidity = 0;
  for (unsigned m = 1; m <= 12; ++m) {
    Sums& month = sums[m - 1];
    if (month.dew_points.empty()) continue;
    const auto hours = static_cast<double>(month.dew_points.size());
    climate.months.push_back(
        {m, static_cast<int>(month.dew_points.size()), Temperature::celsius(month.temperature / hours),
         detail::percentile(month.temperatures, 0.95), RelativeHumidity::fraction(month.humidity / hours),
         detail::percentile(month.dew_points, 0.95), detail::percentile(month.humidities, 0.95),
         month.wet_hours});
    temperature += month.temperature;
    humidity += month.humidity;
    climate.wet_hours += month.wet_hours;
  }
  const auto hours = static_cast<double>(weather.hours.size());
  climate.mean_temperature = Temperature::celsius(temperature / hours);
  climate.mean_humidity = RelativeHumidity::fraction(humidity / hours);

  std::vector<MonthClimate> by_wetness = climate.months;
  std::sort(by_wetness.begin(), by_wetness.end(), [](const MonthClimate& a, const MonthClimate& b) {
    return a.wet_hours != b.wet_hours ? a.wet_hours > b.wet_hours : a.month < b.month;
  });
  for (const MonthClimate& month : by_wetness) {
    if (month.wet_hours == 0 || climate.worst_months.size() == 3) break;
    climate.worst_months.push_back(month.month);
  }
  return climate;
}

std::optional<Temperature> monthly_dew_point_95(const Climate& climate, unsigned month) {
  for (const MonthClimate& here : climate.months) {
    if (here.month == month) return here.dew_point_95;
  }
  return std::nullopt;
}

}  // namespace dampward::exposure
