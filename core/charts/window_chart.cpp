#include "core/charts/window_chart.h"

#include <cmath>

#include "core/base/promise.h"
#include "core/moist_air/humid_air.h"
#include "core/moist_air/saturation.h"

namespace dampward::charts {
namespace {

// Share of the frame's width at which the surface stands; humidity is at the left edge, air between, the field fills the rest.
constexpr double surface_at = 0.42, field_gap = 4;

double logarithm(Temperature temperature) {
  return std::log(moist_air::saturation_pressure(temperature).in(pascal));
}

coating::Surface quickest(const WindowChart& chart, Temperature air) {
  return {"", coating::LumpedCooling{chart.rules.hottest, air, chart.cooling}};
}

coating::WarmWindow window(const WindowChart& chart, Temperature air, RelativeHumidity humidity) {
  const Temperature dew = moist_air::dew_point({air, humidity});
  const coating::Surface surfaces[] = {quickest(chart, air)};
  return coating::warm_window(surfaces, {air, dew, humidity}, chart.rules, {});
}

}  // namespace

Temperature floor_of(const WindowChart& chart, Temperature air, RelativeHumidity humidity) {
  return window(chart, air, humidity).floor;
}

std::optional<Duration> time_down_to(const WindowChart& chart, Temperature surface, Temperature air) {
  return quickest(chart, air).colder_than(surface, Duration{});
}

Temperature cooled_for(const WindowChart& chart, Duration time, Temperature air) {
  return quickest(chart, air).at(time);
}

std::vector<Duration> curves_of(const WindowChart& chart) {
  const double longest = 2.5 * chart.cooling.in(minute);
  std::vector<Duration> curves;
  for (const double minutes : {2, 5, 10, 15, 20, 30, 45, 60, 90, 120, 180, 240}) {
    if (minutes >= 0.15 * chart.cooling.in(minute) && minutes <= longest) curves.push_back(minutes * minute);
  }
  return curves;
}

WindowScales placed(const WindowChart& chart, const Frame& frame) {
  const TemperatureStep margin = chart.rules.dew_margin;
  const Temperature dew_high = chart.rules.hottest - margin;
  DAMPWARD_PROMISE(chart.dew_low < dew_high && chart.air_low < chart.air_high &&
                       chart.humidity_low < RelativeHumidity::fraction(1),
                   "a window chart runs over air whose dew point plus margin lies below the hottest surface");
  const double surface_x = frame.left + surface_at * frame.width;
  const Upright drier = filling(frame.left, frame, 0, -std::log(chart.humidity_low.fraction()));
  const Upright dews = filling(surface_x, frame, logarithm(chart.dew_low), logarithm(dew_high));
  const auto humidity = [drier](double h) { return drier.at(-std::log(h / 100)); };
  const auto surface = [dews, margin](double t) {
    return dews.at(logarithm(Temperature::celsius(t) - margin));
  };
  // Between the two as their moduli say; at the share of the width only where they are alike.
  const auto air = [drier, dews](double t) {
    return on_one_ruler(drier, dews, 1, 1, logarithm(Temperature::celsius(t)));
  };
  // The figures of the air that stand within the frame.
  const auto within = [&](double t) {
    return air(t).y <= frame.foot() + 1e-6 && air(t).y >= frame.top - 1e-6;
  };
  double low = chart.air_low.celsius(), high = chart.air_high.celsius();
  while (!within(low) && low + 1 < high) low += 1;
  while (!within(high) && high - 1 > low) high -= 1;
  const double hottest = chart.rules.hottest.celsius();
  const double field = surface_x + field_gap;
  const double coolest = chart.air_low.celsius();
  const auto room = [=](double t) {
    return Place{field + (frame.right() - field) * (t - coolest) / (hottest - coolest), frame.foot()};
  };
  WindowScales scales{{Scale(chart.humidity_low.percent(), 100, humidity), in_percent},
                      {Scale(low, high, air), in_celsius},
                      {Scale((chart.dew_low + margin).celsius(), hottest, surface), in_celsius},
                      {Scale(coolest, hottest, room), in_celsius},
                      {}};
  // The ruler, then the level line; and the room's air, on which no surface depends more than degree by degree.
  const double coldest = scales.surface.scale.low();
  scales.safe = (worst_misreading(scales.ruler()).most + pencil / scales.surface.scale.stretch(coldest) +
                 pencil / scales.room.scale.stretch(coolest)) *
                kelvin;
  return scales;
}

Temperature drawn(const WindowChart& chart, const WindowScales& scales, std::optional<Duration> time,
                  Temperature air) {
  return (time ? cooled_for(chart, *time, air) : air) - scales.safe;
}

}  // namespace dampward::charts
