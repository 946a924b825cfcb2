#include "core/charts/dew_chart.h"

#include <cmath>

#include "core/base/promise.h"
#include "core/moist_air/humid_air.h"
#include "core/numerics/roots.h"

namespace dampward::charts {
namespace {

// Heat of dry air over heat of vapour: 1006/1860 J/(kg K), ASHRAE Fundamentals 2017 ch. 1 eq. 30, as in moist_air.
constexpr double heats = 1.006 / 1.86;

// An amount that rises with the dew point, on which the wet-bulb equation is straight.
double amount(Temperature dew, Pressure pressure) {
  const double ratio = moist_air::humidity_ratio({dew, RelativeHumidity::fraction(1), pressure}).fraction();
  return -1 / (ratio + heats);
}

double amount_of_bulb(Temperature air, Temperature wet, Pressure pressure) {
  return -1 / (moist_air::humidity_ratio(moist_air::from_wet_bulb(air, wet, pressure)).fraction() + heats);
}

}  // namespace

Temperature dew_point_of(const DewChart& chart, Temperature air, Temperature wet) {
  return moist_air::dew_point(moist_air::from_wet_bulb(air, wet, chart.pressure));
}

DewScales placed(const DewChart& chart, const Frame& frame) {
  DAMPWARD_PROMISE(
      chart.dew_low < chart.dew_high && chart.dew_high <= chart.air_high && chart.dew_low >= coldest_bulb,
      "a dew point chart runs over damp air above freezing");
  const Pressure pressure = chart.pressure;
  const Upright airs = filling(frame.left, frame, chart.air_low.celsius(), chart.air_high.celsius());
  const Upright dews =
      filling(frame.right(), frame, amount(chart.dew_low, pressure), amount(chart.dew_high, pressure));
  const auto air = [airs](double t) { return airs.at(t); };
  const auto dew = [dews, pressure](double t) { return dews.at(amount(Temperature::celsius(t), pressure)); };
  // Two rulers through this bulb: saturated air, and air so much warmer.
  const auto wet = [airs, dews, pressure](double b) {
    const Temperature bulb = Temperature::celsius(b);
    const double warmer = 5;
    const Place a1 = airs.at(b), a2 = airs.at(b + warmer);
    const Place d1 = dews.at(amount(bulb, pressure));
    const Place d2 = dews.at(amount_of_bulb(Temperature::celsius(b + warmer), bulb, pressure));
    // How far along both rulers stand at one height.
    const double share = (a2.y - a1.y) / ((a2.y - a1.y) - (d2.y - d1.y));
    return Place{a1.x + share * (d1.x - a1.x), a1.y + share * (d1.y - a1.y)};
  };
  // The bulbs that stand within the frame.
  const auto at_height = [&](double y) {
    return numerics::root_between([&](double b) { return wet(b).y - y; }, -20.0,
                                  chart.air_high.celsius() + 20, 1e-6);
  };
  const double low = std::max(coldest_bulb.celsius(), std::ceil(at_height(frame.foot())));
  const double high = std::floor(std::min(at_height(frame.top), chart.air_high.celsius()));
  return {{Scale(chart.air_low.celsius(), chart.air_high.celsius(), air), in_celsius},
          {Scale(low, high, wet), in_celsius},
          {Scale(chart.dew_low.celsius(), chart.dew_high.celsius(), dew), in_celsius}};
}

}  // namespace dampward::charts
