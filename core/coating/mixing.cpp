#include "core/coating/mixing.h"

#include <algorithm>

#include "core/base/format.h"

namespace dampward::coating {
namespace {

MassShare mixed(MassShare solids, Density lacquer, Density thinner, double parts) {
  return MassShare::fraction(solids.fraction() / (1 + parts * (thinner / lacquer)));
}

std::string words(const ThinningViews& views) {
  const std::string mix =
      format("Thinned {} parts to one, the mix holds {} % non-volatile by mass ({} to {})",
             fixed(views.thinner_parts, 2), fixed(views.non_volatile.typical.percent(), 0),
             fixed(views.non_volatile.low.percent(), 0), fixed(views.non_volatile.high.percent(), 0));
  const std::string least = fixed(views.published_least.percent(), 0);
  if (!views.disagree) return mix + format("; the published minimum of {} % is kept.", least);
  return mix + format(
                   "; a published minimum is {} %, which allows {} parts. Judge the mix by the flow cup and "
                   "by the film on "
                   "a test panel.",
                   least, fixed(views.parts_within_published, 2));
}

}  // namespace

Range<MassShare> non_volatile(Range<MassShare> solids, Range<Density> lacquer, Range<Density> thinner,
                              double thinner_parts) {
  return {mixed(solids.low, lacquer.low, thinner.high, thinner_parts),
          mixed(solids.typical, lacquer.typical, thinner.typical, thinner_parts),
          mixed(solids.high, lacquer.high, thinner.low, thinner_parts)};
}

double most_thinner_by_mass(MassShare solids, MassShare least) {
  return solids.fraction() / least.fraction() - 1;
}

double most_thinner_parts(MassShare solids, Density lacquer, Density thinner, MassShare least) {
  return std::max(0.0, most_thinner_by_mass(solids, least) * (lacquer / thinner));
}

ThinningViews thinning_views(const materials::Lacquer& lacquer, Range<Density> thinner,
                             double thinner_parts) {
  ThinningViews views;
  views.thinner_parts = thinner_parts;
  views.non_volatile =
      non_volatile(lacquer.solids_by_mass.value, lacquer.density.value, thinner, thinner_parts);
  views.published_least = published_least_solids;
  views.parts_within_published =
      most_thinner_parts(lacquer.solids_by_mass.value.typical, lacquer.density.value.typical, thinner.typical,
                         published_least_solids);
  views.disagree = views.non_volatile.low < published_least_solids;
  views.view = words(views);
  return views;
}

Mix mix_for(Volume ready, double thinner_parts) {
  const Volume lacquer = ready / (1 + thinner_parts);
  return {lacquer, ready - lacquer};
}

}  // namespace dampward::coating
