#include "core/exposure/storage_exposure.h"

#include <algorithm>

#include "core/base/promise.h"
#include "core/exposure/detail/percentile.h"
#include "core/moist_air/deliquescence.h"
#include "core/moist_air/saturation.h"

namespace dampward::exposure {
namespace {

constexpr double first_seen_index = 3;
// Decline of the slowest class against pine's. Source: Ojanen et al. 2010, from memory.
constexpr double held_decline = 0.1;

// Running means over the last 30 days of hours.
class ThirtyDays {
 public:
  void hour(Temperature surface, RelativeHumidity humidity) {
    const std::size_t place = count_ % window;
    if (count_ >= window) {
      temperature_ -= temperatures_[place];
      humidity_ -= humidities_[place];
    }
    temperatures_[place] = surface.celsius();
    humidities_[place] = humidity.fraction();
    temperature_ += temperatures_[place];
    humidity_ += humidities_[place];
    if (++count_ < window) return;
    const double t = temperature_ / window;
    if (t < 5 || t > 40) return;
    worst_ = std::max(worst_, humidity_ / window);
    judged_ = true;
  }

  ThirtyDayRule rule() const {
    if (!judged_) return {};
    return {worst_ < 0.80, true, RelativeHumidity::fraction(worst_)};
  }

 private:
  static constexpr std::size_t window = 30 * 24;
  std::array<double, window> temperatures_{}, humidities_{};
  double temperature_ = 0, humidity_ = 0, worst_ = 0;
  std::size_t count_ = 0;
  bool judged_ = false;
};

// Sums of one month on their way to means.
struct MonthSums {
  MonthInStore month;
  double surface = 0, humidity = 0;  // °C, fraction
  std::vector<Pressure> vapour;
};

MonthInStore finished(MonthSums& sums) {
  MonthInStore& month = sums.month;
  month.mean_surface = Temperature::celsius(sums.surface / month.hours);
  month.mean_humidity = RelativeHumidity::fraction(sums.humidity / month.hours);
  month.dew_point_95 = moist_air::saturation_temperature(detail::percentile(sums.vapour, 0.95));
  return month;
}

}  // namespace

StorageExposure expose(const Weather& weather, shop::Storage storage, const StorageSettings& settings) {
  DAMPWARD_PROMISE(!weather.hours.empty(), "exposure is asked of weather with at least one hour");
  StorageExposure result;
  result.storage = storage;
  StoredUnit unit(storage, weather.hours.front(), settings);
  MouldGrowth mould, held(held_decline);
  ThirtyDays thirty_days;
  std::array<MonthSums, 12> months;
  const RelativeHumidity sea_salt =
      moist_air::deliquescence(moist_air::Salt::magnesium_chloride, Temperature::celsius(25));
  const RelativeHumidity table_salt =
      moist_air::deliquescence(moist_air::Salt::sodium_chloride, Temperature::celsius(25));

  for (const WeatherHour& hour : weather.hours) {
    const SurfaceHour state = unit.hour(hour);
    const double humidity = state.humidity.percent();
    const bool thawed = state.surface > Temperature::celsius(0);
    MonthSums& sums = months[hour.month - 1];
    MonthInStore& month = sums.month;

    mould.hour(state.surface, state.humidity);
    held.hour(state.surface, state.humidity);
    thirty_days.hour(state.surface, state.humidity);
    for (std::size_t i = 0; i < mould_classes.size(); ++i) {
      const double index = mould.indices()[i];
      result.mould_max[i] = std::max(result.mould_max[i], index);
      result.mould_max_held[i] = std::max(result.mould_max_held[i], held.indices()[i]);
      if (index >= first_seen_index && !result.first_seen[i]) result.first_seen[i] = hour.begins;
    }
    if (thawed && humidity > 80) ++month.wet_hours;
    if (thawed && humidity >= 70 && humidity <= 80) ++result.xerophile_hours;
    if (thawed && state.humidity > table_salt) ++result.brine_hours;
    if (thawed && state.humidity > sea_salt) ++result.sea_salt_hours;
    month.condensation += state.wet;
    month.mould_end = mould.indices();
    ++month.hours;
    sums.surface += state.surface.celsius();
    sums.humidity += state.humidity.fraction();
    sums.vapour.push_back(state.vapour);
  }

  for (unsigned m = 1; m <= 12; ++m) {
    MonthSums& sums = months[m - 1];
    if (sums.month.hours == 0) continue;
    sums.month.month = m;
    result.months.push_back(finished(sums));
    result.wet_hours += sums.month.wet_hours;
    result.condensation += sums.month.condensation;
  }
  result.mould_end = mould.indices();
  result.thirty_days = thirty_days.rule();
  return result;
}

}  // namespace dampward::exposure
