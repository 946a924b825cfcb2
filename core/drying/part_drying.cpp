#include "core/drying/part_drying.h"

#include <algorithm>
#include <cmath>

#include "core/materials/diffusivity.h"
#include "core/materials/isotherm.h"
#include "core/numerics/integrate.h"

namespace dampward::drying {

Diffusivity effective_diffusivity(const DryingBody& body, Temperature at, Side side) {
  const Range<Diffusivity> here = materials::diffusivity(body.diffusion, at);
  if (side == Side::typical) return here.typical;
  const Range<Diffusivity>& known = body.diffusion.diffusivity.value;
  const double both = std::log(here.typical / here.low), figure = std::log(known.typical / known.low);
  const double thickness = 2 * std::log(body.path.high / body.path.typical);
  return here.typical * std::exp(-std::hypot(figure, both - figure, thickness));
}

Area diffused(const DryingBody& body, const TemperatureCurve& curve, Side side) {
  double sum = 0;
  const auto rate = [&](double time) {
    return effective_diffusivity(body, curve.at(time * second), side).si();
  };
  for (std::size_t i = 1; i < curve.points().size(); ++i) {
    sum += numerics::integral(rate, curve.points()[i - 1].time.si(), curve.points()[i].time.si());
  }
  return Area::si(sum);
}

Progress progress_after(const DryingBody& body, const TemperatureCurve& warm_up, Side side) {
  return {diffused(body, warm_up, side),
          effective_diffusivity(body, warm_up.points().back().temperature, side)};
}

Duration hold_needed(const DryingBody& body, const Progress& progress) {
  return std::max(Duration{}, (body.needed - progress.diffused) / progress.rate);
}

double residual_after(const DryingBody& body, const Progress& progress, Duration hold) {
  const Length path = body.path.typical;
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
  return body.needed / effective_diffusivity(body, at, side);
}

}  // namespace dampward::drying
