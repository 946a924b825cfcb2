#include "core/coating/cooling.h"

#include <algorithm>
#include <cmath>

#include "core/base/promise.h"

namespace dampward::coating {
namespace {

using Found = std::optional<Duration>;

Temperature at_time(const LumpedCooling& body, Duration t) {
  return body.air + std::exp(-(t / body.time_constant)) * (body.at_start - body.air);
}
Temperature at_time(const TemperatureCurve& curve, Duration t) {
  return curve.at(t);
}

// When the body crosses a level; only for a level strictly between its start and the air.
Duration crossing(const LumpedCooling& body, Temperature level) {
  return std::log((body.at_start - body.air) / (level - body.air)) * body.time_constant;
}

Found settled_below(const LumpedCooling& body, Temperature top) {
  DAMPWARD_PROMISE(body.time_constant > Duration{}, "a cooling body has a time constant above zero");
  if (body.at_start <= top && body.air <= top) return Duration{};
  if (body.air >= top) return body.air == top && body.at_start <= top ? Found(Duration{}) : std::nullopt;
  return crossing(body, top);
}

Found first_colder(const LumpedCooling& body, Temperature floor, Duration from) {
  DAMPWARD_PROMISE(body.time_constant > Duration{}, "a cooling body has a time constant above zero");
  if (at_time(body, from) < floor) return from;
  if (body.air >= floor) return std::nullopt;
  return std::max(from, crossing(body, floor));
}

// Where the straight line from a to b meets a level between them.
Duration meets(const TemperatureCurve::Point& a, const TemperatureCurve::Point& b, Temperature level) {
  return a.time + ((level - a.temperature) / (b.temperature - a.temperature)) * (b.time - a.time);
}

Found settled_below(const TemperatureCurve& curve, Temperature top) {
  const auto& points = curve.points();
  if (points.back().temperature > top) return std::nullopt;
  for (std::size_t i = points.size(); i-- > 1;) {
    if (points[i - 1].temperature > top) return std::max(Duration{}, meets(points[i - 1], points[i], top));
  }
  return Duration{};
}

Found first_colder(const TemperatureCurve& curve, Temperature floor, Duration from) {
  if (curve.at(from) < floor) return from;
  const auto& points = curve.points();
  for (std::size_t i = 1; i < points.size(); ++i) {
    if (points[i].time > from && points[i].temperature < floor) {
      return std::max(from, meets(points[i - 1], points[i], floor));
    }
  }
  return std::nullopt;
}

}  // namespace

Temperature Surface::at(Duration after_oven) const {
  return std::visit([&](const auto& c) { return at_time(c, after_oven); }, cooling);
}

std::optional<Duration> Surface::at_or_below(Temperature top) const {
  return std::visit([&](const auto& c) { return settled_below(c, top); }, cooling);
}

std::optional<Duration> Surface::colder_than(Temperature floor, Duration from) const {
  return std::visit([&](const auto& c) { return first_colder(c, floor, from); }, cooling);
}

}  // namespace dampward::coating
