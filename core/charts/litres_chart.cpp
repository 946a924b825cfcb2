#include "core/charts/litres_chart.h"

#include <algorithm>
#include <cmath>

#include "core/base/promise.h"
#include "core/charts/round_figure.h"

namespace dampward::charts {

LitresScales placed(const LitresChart& chart, const Frame& frame) {
  DAMPWARD_PROMISE(!chart.tools.empty(), "lacquer is put on with something");
  double small = 0.05, large = 1;  // m²: a telephone handset, a tall cabinet
  for (const LitresChart::Set& set : chart.sets) {
    small = std::min(small, in_square_metres.figure(set.area.typical));
    large = std::max(large, in_square_metres.figure(set.area.high));
  }
  double least = in_litres_on_a_square_metre.figure(chart.tools.front().on_the_surface.low), most = least;
  for (const LitresChart::Tool& tool : chart.tools) {
    least = std::min(least, in_litres_on_a_square_metre.figure(tool.on_the_surface.low));
    most = std::max(most, in_litres_on_a_square_metre.figure(tool.on_the_surface.high));
  }
  small = round_below(small), large = round_above(large);
  least = round_below(least), most = round_above(most);
  const Upright areas = filling(frame.left, frame, std::log(small), std::log(large));
  const Upright takes = filling(frame.right(), frame, std::log(least), std::log(most));
  const auto mix = [areas, takes](double v) { return on_one_ruler(areas, takes, 1, 1, std::log(v)); };
  return {
      {Scale(small, large, [areas](double a) { return areas.at(std::log(a)); }), in_square_metres},
      {Scale(std::max(0.005, round_above(small * least)), round_below(large * most), mix), in_litres},
      {Scale(least, most, [takes](double l) { return takes.at(std::log(l)); }), in_litres_on_a_square_metre}};
}

}  // namespace dampward::charts
