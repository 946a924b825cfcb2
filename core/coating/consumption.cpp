#include "core/coating/consumption.h"

#include <algorithm>

#include "core/base/promise.h"

namespace dampward::coating {
namespace {

Range<Volume> part_of(Range<Volume> whole, double share) {
  return {share * whole.low, share * whole.typical, share * whole.high};
}

}  // namespace

double thinner_parts(const materials::Lacquer& lacquer, materials::Method method) {
  return method == materials::Method::brush ? lacquer.thinner_parts_for_brush
                                            : lacquer.thinner_parts_for_spray;
}

const materials::CoatRule* coat_rule(const materials::Lacquer& lacquer, materials::Method method) {
  for (const materials::CoatRule& rule : lacquer.coats) {
    if (rule.method == method) return &rule;
  }
  return nullptr;
}

Range<Length> film_from(Volume ready, Range<Area> area, Range<VolumeShare> solids,
                        Range<TransferEfficiency> efficiency) {
  DAMPWARD_PROMISE(area.low > Area{}, "a film lies on some area");
  const auto built = [&](Area a, VolumeShare s, TransferEfficiency e) {
    return (s.fraction() * e.fraction()) * (ready / a);
  };
  return {built(area.high, solids.low, efficiency.low),
          built(area.typical, solids.typical, efficiency.typical),
          built(area.low, solids.high, efficiency.high)};
}

std::optional<Consumption> consumption(Range<Area> area, const materials::Lacquer& lacquer,
                                       Range<Density> solvent, const Application& application) {
  const materials::CoatRule* rule = coat_rule(lacquer, application.method);
  if (!rule) return std::nullopt;
  const double parts = thinner_parts(lacquer, application.method);
  const Range<VolumeShare> solids =
      thinned(volume_solids(lacquer.solids_by_mass.value, lacquer.density.value, solvent), parts);
  Consumption use;
  use.coats = rule->coats;
  use.film = lacquer.film_wanted.value;
  use.solids = solids;
  const auto one_coat = [&](Length film) { return film / static_cast<double>(std::max(1, use.coats)); };
  use.dry_coat = {one_coat(use.film.low), one_coat(use.film.typical), one_coat(use.film.high)};
  use.wet_coat = {wet_film(use.dry_coat.low, solids.high), wet_film(use.dry_coat.typical, solids.typical),
                  wet_film(use.dry_coat.high, solids.low)};
  use.ready = litres(area, use.film, solids, application.efficiency);
  use.lacquer = part_of(use.ready, 1 / (1 + parts));
  use.thinner = part_of(use.ready, parts / (1 + parts));
  // The leanest mix goes with the largest volume, so the ends keep their order.
  use.solvent = {(1 - solids.high.fraction()) * use.ready.low,
                 (1 - solids.typical.fraction()) * use.ready.typical,
                 (1 - solids.low.fraction()) * use.ready.high};
  return use;
}

}  // namespace dampward::coating
