#include "core/drying/part_drying.h"

#include <algorithm>

#include "core/materials/diffusivity.h"
#include "core/materials/isotherm.h"
#include "core/numerics/integrate.h"

namespace dampward::drying {
namespace {

Diffusivity diffusivity(const materials::MoistureDiffusion& diffusion, Temperature at, Side side) {
  const Range<Diffusivity> range = materials::diffusivity(diffusion, at);
  return side == Side::safe ? range.low : range.typical;
}

}  // namespace

Area diffused(const materials::MoistureDiffusion& diffusion, const TemperatureCurve& curve, Side side) {
  double sum = 0;
  const auto rate = [&](double time) { return diffusivity(diffusion, curve.at(time * second), side).si(); };
  for (std::size_t i = 1; i < curve.points().size(); ++i) {
    sum += numerics::integral(rate, curve.points()[i - 1].time.si(), curve.points()[i].time.si());
  }
  return Area::si(sum);
}

Progress progress_after(const DryingBody& body, const TemperatureCurve& warm_up, Side side) {
  return {diffused(body.diffusion, warm_up, side),
          diffusivity(body.diffusion, warm_up.points().back().temperature, side)};
}

Duration hold_needed(const DryingBody& body, const Progress& progress, Side side) {
  const Area needed = side == Side::safe ? body.needed.high : body.needed.typical;
  return std::max(Duration{}, (needed - progress.diffused) / progress.rate);
}

double residual_after(const DryingBody& body, const Progress& progress, Duration hold, Side side) {
  const Length path = side == Side::safe ? body.path.high : body.path.typical;
  return residual_share(body.shape, (progress.diffused + progress.rate * hold) / (path * path));
}

std::optional<Sorption> sorption_after(const DryingBody& body, const moist_air::HumidAir& from,
                                       const moist_air::HumidAir& oven, double residual) {
  const auto start = materials::equilibrium_moisture(body.isotherm, from.temperature, from.humidity);
  const auto floor = materials::equilibrium_moisture(body.isotherm, oven.temperature, oven.humidity);
  if (!start || !floor) return std::nullopt;
  const double removable = std::max(0.0, start->fraction() - floor->fraction());
  return Sorption{*start, *floor, MoistureContent::fraction(start->fraction() - (1 - residual) * removable)};
}

Duration time_to_dry(const DryingBody& body, Temperature at, Side side) {
  return (side == Side::safe ? body.needed.high : body.needed.typical) /
         diffusivity(body.diffusion, at, side);
}

}  // namespace dampward::drying
