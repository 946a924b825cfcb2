#include "core/coating/consumption.h"

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
