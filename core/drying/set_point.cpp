#include "core/drying/set_point.h"

#include <algorithm>
#include <cmath>

#include "core/drying/oven_model.h"

namespace dampward::drying {
namespace {

Temperature whole_degrees_down(Temperature t) {
  return Temperature::celsius(std::floor(t.celsius() + 1e-9));
}

}  // namespace

OvenExcess oven_excess(const shop::Oven& oven) {
  return {.evenness = oven.evenness, .swing = oven.swing, .lamps = lamp_rise(oven, coldest_bake)};
}

std::optional<SetPoint> highest_set_point(Temperature lowest_allowed, const OvenExcess& excess,
                                          const shop::Oven& oven, Temperature reachable) {
  SetPoint answer{whole_degrees_down(lowest_allowed - excess.sum()), SetPointBound::part};
  if (const Temperature highest = whole_degrees_down(oven.hottest_setting); highest < answer.set) {
    answer = {highest, SetPointBound::oven_setting};
  }
  // The place of the sensor swings above the set point, so the heat must reach that far.
  if (const Temperature top = whole_degrees_down(reachable - oven.swing); top < answer.set) {
    answer = {top, SetPointBound::heat};
  }
  if (answer.set < coldest_bake || answer.set < oven.coldest_setting) return std::nullopt;
  return answer;
}

std::optional<Duration> rule_hours(Temperature set) {
  constexpr double top = 160, bottom = 120;  // °F
  // A whole degree Celsius may stand up to half a step beside the printed Fahrenheit figure.
  if (std::round(set.fahrenheit()) < bottom || std::round(set.fahrenheit()) > top) return std::nullopt;
  return (3 + std::max(0.0, top - set.fahrenheit()) / 10) * hour;
}

}  // namespace dampward::drying
