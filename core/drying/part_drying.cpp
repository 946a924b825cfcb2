#include "core/drying/part_drying.h"

#include <cmath>

#include "core/materials/diffusivity.h"

namespace dampward::drying {

Diffusivity effective_diffusivity(const DryingBody& body, Temperature at, Side side) {
  const Range<Diffusivity> here = materials::diffusivity(body.diffusion, at);
  if (side == Side::typical) return here.typical;
  const bool quick = side == Side::quick;
  const Range<Diffusivity>& known = body.diffusion.diffusivity.value;
  // Each spread as a logarithm, by which the typical figure moves.
  const auto spread = [&](const Range<Diffusivity>& d) {
    return quick ? std::log(d.high / d.typical) : std::log(d.typical / d.low);
  };
  const double both = spread(here), figure = spread(known);
  const double thickness = 2 * (quick ? std::log(body.path.typical / body.path.low)
                                      : std::log(body.path.high / body.path.typical));
  const double moves = std::hypot(figure, both - figure, thickness);
  return here.typical * std::exp(quick ? moves : -moves);
}

Duration time_to_dry(const DryingBody& body, Temperature at, Side side) {
  return body.needed / effective_diffusivity(body, at, side);
}

}  // namespace dampward::drying
