#include "core/drying/part_drying.h"

#include <cmath>

#include "core/materials/diffusivity.h"

namespace dampward::drying {

Diffusivity effective_diffusivity(const DryingBody& body, Temperature at, Side side) {
  const Range<Diffusivity> here = materials::diffusivity(body.diffusion, at);
  if (side == Side::typical) return here.typical;
  const Range<Diffusivity>& known = body.diffusion.diffusivity.value;
  const double both = std::log(here.typical / here.low), figure = std::log(known.typical / known.low);
  const double thickness = 2 * std::log(body.path.high / body.path.typical);
  return here.typical * std::exp(-std::hypot(figure, both - figure, thickness));
}

Duration time_to_dry(const DryingBody& body, Temperature at, Side side) {
  return body.needed / effective_diffusivity(body, at, side);
}

}  // namespace dampward::drying
