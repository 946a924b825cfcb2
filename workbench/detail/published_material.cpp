#include "core/materials/diffusivity.h"
#include "core/materials/isotherm.h"
#include "workbench/detail/published_quantities.h"

#include <limits>

namespace dampward::workbench {
namespace {

using namespace materials;

double wood_moisture(PublishedInputs& in) {
  const auto moisture = equilibrium_moisture(Isotherm::wood, Temperature::fahrenheit(in.number("t_f")),
                                             RelativeHumidity::percent(in.number("rh_pct")));
  return moisture ? moisture->percent() : std::numeric_limits<double>::quiet_NaN();
}

// The bake that moves as much water as so many hours at another temperature: equal D t.
double bake_time(PublishedInputs& in) {
  const Duration known = in.number("hours") * hour;
  const Temperature at = Temperature::celsius(in.number("at_c")),
                    to = Temperature::celsius(in.number("to_c"));
  MoistureDiffusion epoxy;
  epoxy.diffusivity.value = Diffusivity::si(1e-12);  // only its fall with temperature matters
  epoxy.at = at;
  epoxy.activation_energy.value = unmeasured_activation_energy().value.typical;
  return (known * (diffusivity(epoxy, at).typical / diffusivity(epoxy, to).typical)).in(hour);
}

constexpr PublishedQuantity quantities[] = {
    {"wood_moisture", "water in wood at rest with the air around it", wood_moisture},
    {"bake_time", "hours of a bake that dries an epoxy body as far as known hours at another temperature",
     bake_time},
};

}  // namespace

std::span<const PublishedQuantity> material_quantities() {
  return quantities;
}

}  // namespace dampward::workbench
