#include "core/coating/film.h"
#include "core/coating/flow_cup.h"
#include "workbench/detail/published_quantities.h"

#include <limits>

namespace dampward::workbench {
namespace {

using namespace coating;

constexpr double no_number = std::numeric_limits<double>::quiet_NaN();

VolumeShare solids(PublishedInputs& in) {
  return VolumeShare::percent(in.number("solids_vol_pct"));
}
VolumeShare thinned_solids(PublishedInputs& in) {
  return thinned(solids(in), in.number("thinner_parts")).typical;
}

double cup_seconds(PublishedInputs& in) {
  const FlowCup* cup = find_cup(in.word("cup"));
  const KinematicViscosity viscosity = in.number("v_cst") * centistokes;
  if (cup == nullptr) return no_number;
  const auto drain = drain_time(*cup, viscosity);
  return drain ? drain->in(second) : no_number;
}

constexpr PublishedQuantity quantities[] = {
    {"spreading_rate", "area a US gallon covers when nothing is lost",
     [](PublishedInputs& in) {
       return spread(in.number("dry_mil") * mil, solids(in)).in(square_foot / us_gallon);
     }},
    {"spreading_rate_si", "area a litre covers when nothing is lost",
     [](PublishedInputs& in) {
       return spread(in.number("dry_um") * micrometre, solids(in)).in(square_metre_per_litre);
     }},
    {"wet_film", "wet film that dries to the wanted one, after thinning",
     [](PublishedInputs& in) {
       return wet_film(in.number("dry_um") * micrometre, thinned_solids(in)).in(micrometre);
     }},
    {"thinned_solids", "solids by volume after thinning",
     [](PublishedInputs& in) { return thinned_solids(in).percent(); }},
    {"cup_seconds", "time a cup takes to drain", cup_seconds},
};

}  // namespace

std::span<const PublishedQuantity> coating_quantities() {
  return quantities;
}

}  // namespace dampward::workbench
