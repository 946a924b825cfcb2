#include "core/drying/correlations.h"
#include "core/drying/diffusion.h"
#include "core/drying/lumped.h"
#include "workbench/detail/published_quantities.h"

namespace dampward::workbench {
namespace {

using namespace drying;

double vertical_plate_heat(PublishedInputs& in) {
  const Temperature surface = Temperature::celsius(in.number("t_c")),
                    air = Temperature::celsius(in.number("air_c"));
  const Length height = in.number("height_m") * metre, width = in.number("width_m") * metre;
  return (natural_convection(surface, air, height) * (height * width) * (surface - air)).in(watt);
}

constexpr PublishedQuantity quantities[] = {
    {"nusselt_vertical_plate", "Nusselt number of an upright plate in still air",
     [](PublishedInputs& in) { return vertical_plate_nusselt(in.number("rayleigh"), in.number("prandtl")); }},
    {"nusselt_forced_plate", "Nusselt number of a flat plate in a stream",
     [](PublishedInputs& in) { return forced_plate_nusselt(in.number("reynolds"), in.number("prandtl")); }},
    {"vertical_plate_heat", "heat from an upright plate to still air", vertical_plate_heat},
    {"radiation_coefficient", "radiation between a body and the walls around it, as a coefficient",
     [](PublishedInputs& in) {
       return radiation_coefficient(in.number("emissivity"), Temperature::celsius(in.number("surface_c")),
                                    Temperature::celsius(in.number("wall_c")))
           .in(watt_per_square_metre_kelvin);
     }},
    {"lumped_time_constant", "heat capacity over what the surface passes",
     [](PublishedInputs& in) {
       const HeatCapacity capacity =
           in.number("mass_kg") * kilogram * (in.number("cp_j_kgk") * joule_per_kilogram_kelvin);
       const HeatTransferCoefficient coefficient = in.number("h_w_m2k") * watt_per_square_metre_kelvin;
       return time_constant(capacity, in.number("area_m2") * square_metre, coefficient).typical.in(second);
     }},
    {"lumped_temperature", "temperature of a body of one temperature after a while in other air",
     [](PublishedInputs& in) {
       return lumped_temperature(Temperature::celsius(in.number("start_c")),
                                 Temperature::celsius(in.number("around_c")), in.number("tau_s") * second,
                                 in.number("after_s") * second)
           .celsius();
     }},
    {"plate_share_out", "share of its removable water that has left a plate",
     [](PublishedInputs& in) { return 100 * (1 - residual_share(Shape::plate, in.number("fourier"))); }},
};

}  // namespace

std::span<const PublishedQuantity> drying_quantities() {
  return quantities;
}

}  // namespace dampward::workbench
