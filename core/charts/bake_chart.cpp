#include "core/charts/bake_chart.h"

#include <algorithm>
#include <cmath>

#include "core/base/promise.h"
#include "core/charts/round_figure.h"

namespace dampward::charts {

Duration hold_of(const BakeChart& chart, Temperature set, Length thickness, drying::Side side) {
  DAMPWARD_PROMISE(!chart.porous.empty(), "a bake chart knows how fast water leaves some porous material");
  Duration longest;
  for (const materials::MoistureDiffusion& diffusion : chart.porous) {
    drying::DryingBody sheet;
    sheet.shape = equipment::Shape::plate;
    sheet.path = drying::path_length(sheet.shape, thickness, 2);
    sheet.diffusion = diffusion;
    sheet.needed =
        drying::fourier_for_residual(sheet.shape, chart.residual) * (sheet.path.typical * sheet.path.typical);
    longest = std::max(longest, drying::time_to_dry(sheet, set - chart.evenness, side));
  }
  return longest;
}

BakeScales placed(const BakeChart& chart, const Frame& frame) {
  DAMPWARD_PROMISE(chart.set_low < chart.set_high && chart.thinnest < chart.thickest,
                   "a bake chart runs over settings and thicknesses");
  // The setting by what a sheet of one millimetre takes there: hot is quick, so the hottest stands at the foot.
  const auto slowness = [chart](double set) {
    return std::log(hold_of(chart, Temperature::celsius(set), 1 * millimetre).in(hour));
  };
  const auto size = [](double thickness) { return 2 * std::log(thickness); };
  const double low = chart.set_low.celsius(), high = chart.set_high.celsius();
  const double thin = chart.thinnest.in(millimetre), thick = chart.thickest.in(millimetre);
  const Upright sets = filling(frame.left, frame, slowness(high), slowness(low));
  const Upright sizes = filling(frame.right(), frame, size(thin), size(thick));
  const double given_up = (chart.excess + chart.margin).in(kelvin);
  const auto set = [=](double t) { return sets.at(slowness(t)); };
  const auto limit = [=](double t) { return set(t - given_up); };
  const auto thickness = [=](double l) { return sizes.at(size(l)); };
  const auto hold = [=](double h) { return on_one_ruler(sets, sizes, 1, 1, std::log(h)); };
  const double shortest = std::exp(slowness(high) + size(thin)),
               longest = std::exp(slowness(low) + size(thick));
  return {
      {Scale(low, high, set), in_celsius},
      {Scale(5 * std::ceil((low + given_up) / 5), 5 * std::floor((high + given_up) / 5), limit), in_celsius},
      {Scale(round_above(shortest), round_below(longest), hold), in_hours},
      {Scale(thin, thick, thickness), in_millimetres}};
}

}  // namespace dampward::charts
