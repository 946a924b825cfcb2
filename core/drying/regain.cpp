#include "core/drying/regain.h"

#include <algorithm>
#include <utility>

#include "core/base/promise.h"
#include "core/drying/sorbing_body.h"
#include "core/materials/isotherm.h"
#include "core/moist_air/saturation.h"

namespace dampward::drying {
namespace {

constexpr Duration first_step = 15 * second, longest_step = 10 * minute;
constexpr double growth = 1.05;
// Under so little removable water nothing worth counting was driven out, and so nothing comes back.
constexpr double least_removable = 1e-4;

MoistureContent surface_of(const DryingBody& body, const Sorption& sorption, Temperature at,
                           Pressure vapour) {
  const double humidity = std::clamp(vapour / moist_air::saturation_pressure(at), 0.0, 1.0);
  return std::max(sorption.floor,
                  materials::equilibrium_moisture(body.isotherm, at, RelativeHumidity::fraction(humidity))
                      .value_or(sorption.floor));
}

}  // namespace

Regain::Regain(std::vector<Point> points) : points_(std::move(points)) {
  DAMPWARD_PROMISE(!points_.empty(), "a course has a beginning");
}

double Regain::at(Duration after) const {
  const auto next =
      std::find_if(points_.begin(), points_.end(), [&](const Point& p) { return p.after >= after; });
  if (next == points_.end()) return points_.back().share;
  if (next == points_.begin()) return next->share;
  const Point& last = *std::prev(next);
  return last.share + (after - last.after) / (next->after - last.after) * (next->share - last.share);
}

std::optional<Duration> Regain::passes(double share) const {
  if (points_.front().share > share) return points_.front().after;
  for (std::size_t i = 1; i < points_.size(); ++i) {
    const Point &before = points_[i - 1], &here = points_[i];
    if (here.share <= share) continue;
    return before.after + (share - before.share) / (here.share - before.share) * (here.after - before.after);
  }
  return std::nullopt;
}

Regain Regain::counted_from(Duration later) const {
  std::vector<Point> points{{Duration{}, at(later)}};
  for (const Point& point : points_) {
    if (point.after > later) points.push_back({point.after - later, point.share});
  }
  return Regain(std::move(points));
}

Regain regain(const DryingBody& body, const std::optional<Sorption>& sorption, const AfterBake& after) {
  DAMPWARD_PROMISE(after.until > Duration{}, "a regain is reckoned over some time");
  const double start = sorption ? sorption->start.fraction() : 1,
               floor = sorption ? sorption->floor.fraction() : 0;
  std::vector<Regain::Point> points{{Duration{}, 0}};
  if (start - floor < least_removable) return Regain(std::move(points));
  SorbingBody inside(body.shape, body.layer, MoistureContent::fraction(floor));
  const Length path = body.path.typical;
  Duration length = first_step;
  for (Duration now; now < after.until; length = std::min(growth * length, longest_step)) {
    const Duration step = std::min(length, after.until - now);
    const Temperature from = after.part(now), to = after.part(now + step);
    const Diffusivity mean =
        0.5 * (effective_diffusivity(body, from, Side::quick) + effective_diffusivity(body, to, Side::quick));
    inside.advance(mean * step / (path * path),
                   sorption ? surface_of(body, *sorption, to, after.vapour) : MoistureContent::fraction(1));
    now += step;
    const double share = (inside.layer().fraction() - floor) / (start - floor);
    points.push_back({now, std::max(points.back().share, share)});
  }
  return Regain(std::move(points));
}

}  // namespace dampward::drying
