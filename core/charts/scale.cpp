#include "core/charts/scale.h"

#include <cmath>

#include "core/base/promise.h"
#include "core/numerics/roots.h"

namespace dampward::charts {
namespace {

// Of which side of the ruler from a to b a place lies, and how far, times the ruler's length.
double side_of(const Place& a, const Place& b, const Place& place) {
  return (b.x - a.x) * (place.y - a.y) - (b.y - a.y) * (place.x - a.x);
}

}  // namespace

Scale::Scale(double low, double high, std::function<Place(double)> at)
    : low_(low), high_(high), at_(std::move(at)) {
  DAMPWARD_PROMISE(low < high, "a scale runs from a lower figure to a higher one");
}

double Scale::stretch(double figure) const {
  const double step = 1e-5 * (high_ - low_);
  const Place a = at_(figure - step), b = at_(figure + step);
  return std::hypot(b.x - a.x, b.y - a.y) / (2 * step);
}

Place Scale::beside(double figure, double millimetres) const {
  const double step = 1e-5 * (high_ - low_);
  const Place here = at_(figure), a = at_(figure - step), b = at_(figure + step);
  const double share = millimetres / std::hypot(b.x - a.x, b.y - a.y);
  return {here.x + share * (b.x - a.x), here.y + share * (b.y - a.y)};
}

std::optional<double> Scale::crossed_by(const Place& a, const Place& b) const {
  const auto side = [&](double figure) { return side_of(a, b, at_(figure)); };
  if (side(low_) * side(high_) > 0) {
    // An end itself, but for rounding.
    const double ruler = std::hypot(b.x - a.x, b.y - a.y);
    for (const double end : {low_, high_})
      if (std::abs(side(end)) < 1e-6 * ruler) return end;
    return std::nullopt;
  }
  return numerics::root_between(side, low_, high_, 1e-12 * (high_ - low_));
}

double Scale::across_from(const Place& place, double near_figure) const {
  const Place here = at_(near_figure), ahead = beside(near_figure, 1);
  const Place across{place.x - (ahead.y - here.y), place.y + (ahead.x - here.x)};
  if (const auto figure = crossed_by(place, across)) return *figure;
  const double along = (place.x - here.x) * (ahead.x - here.x) + (place.y - here.y) * (ahead.y - here.y);
  return near_figure + along / stretch(near_figure);
}

}  // namespace dampward::charts
