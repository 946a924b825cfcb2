#include "core/charts/fan_chart.h"

#include <cmath>

#include "core/charts/round_figure.h"

namespace dampward::charts {

FanScales placed(const FanChart& chart, const Frame& frame) {
  const double least = in_litres_an_hour.figure(chart.least_rate),
               most = in_litres_an_hour.figure(chart.most_rate);
  // One modulus for both, so that the answer stands in the middle; the shorter scale is centred.
  const Upright rates = filling(frame.right(), frame, std::log(least), std::log(most));
  const double people_height = rates.modulus * std::log(chart.most_people);
  const Upright people{frame.left, frame.foot() - 0.5 * (frame.height - people_height), rates.modulus};
  const double litre_an_hour = in_cubic_metres_a_minute.figure(in_litres_an_hour.value(1));
  const auto on_the_line = [=](double need) {
    return
        [=](double air) { return on_one_ruler(people, rates, 1, 1, std::log(air / (need * litre_an_hour))); };
  };
  const auto scale = [&](double need) {
    const double one = need * litre_an_hour;
    return ScaleOf<VolumeFlow>{
        Scale(round_above(one * least), round_below(one * most * chart.most_people), on_the_line(need)),
        in_cubic_metres_a_minute};
  };
  return {{Scale(1, chart.most_people, [people](double n) { return people.at(std::log(n)); }), in_persons},
          scale(chart.fire),
          scale(chart.breathe),
          {Scale(least, most, [rates](double r) { return rates.at(std::log(r)); }), in_litres_an_hour}};
}

}  // namespace dampward::charts
