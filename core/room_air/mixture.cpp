#include "core/room_air/mixture.h"

#include <algorithm>
#include <limits>
#include <tuple>

#include "core/base/promise.h"

namespace dampward::room_air {
namespace {

using materials::Solvent;

bool is_water(const Solvent& solvent) {
  return solvent.family == "water";
}

std::optional<VapourShare> lower_limit(const Solvent& solvent) {
  if (!solvent.lower_flammable_limit) return std::nullopt;
  return solvent.lower_flammable_limit->value.low;
}

// Worst figures of a table, to stand in for missing ones.
struct StandIns {
  MolarMass lightest;
  VapourShare least_limit;
};

StandIns stand_ins(std::span<const Solvent> table) {
  std::optional<MolarMass> lightest;
  std::optional<VapourShare> least;
  for (const Solvent& s : table) {
    if (is_water(s)) continue;
    if (s.molar_mass && (!lightest || *s.molar_mass < *lightest)) lightest = s.molar_mass;
    if (const auto limit = lower_limit(s); limit && (!least || *limit < *least)) least = limit;
  }
  DAMPWARD_PROMISE(lightest && least, "the solvent table holds molar masses and lower flammable limits");
  return {*lightest, *least};
}

VolatilePart part_of(const Solvent& solvent, const StandIns& worst, const std::string& authority) {
  VolatilePart part;
  part.solvent = solvent.id;
  part.name = solvent.name;
  const auto limit = lower_limit(solvent);
  part.assumed = !solvent.molar_mass || !limit;
  part.molar_mass = solvent.molar_mass.value_or(worst.lightest);
  part.lower_limit = limit.value_or(worst.least_limit);
  part.limit = eight_hour_limit(solvent, authority);
  part.short_limit = short_limit(solvent, authority);
  part.danger_to_life = solvent.danger_to_life;
  return part;
}

// Harm done by a kilogram of it. A solvent nobody set a limit for is harmful beyond measure.
double harm(const VolatilePart& part, Worst worst) {
  if (worst == Worst::fire) return 1 / (part.molar_mass.si() * part.lower_limit.fraction());
  if (!part.limit || !(part.limit->limit.fraction() > 0)) return std::numeric_limits<double>::max();
  return 1 / (part.molar_mass.si() * part.limit->limit.fraction());
}

VolatilePart worst_of(std::span<const Solvent> table, const StandIns& worst, Worst kind,
                      const std::string& authority) {
  std::optional<VolatilePart> found;
  for (const Solvent& s : table) {
    if (is_water(s) || !s.molar_mass) continue;
    const VolatilePart part = part_of(s, worst, authority);
    if (kind == Worst::people && !part.limit)
      continue;  // a blank in the table is no property of an unknown liquid
    if (!found || harm(part, kind) > harm(*found, kind)) found = part;
  }
  if (!found) found = part_of(table.front(), worst, authority);
  found->assumed = true;
  return *found;
}

struct Filling {
  VolatilePart part;
  double low = 0, high = 0, harm = 0;
  bool counts = true;  // water does not
};

}  // namespace

Mixture worst_mixture(std::span<const materials::SolventPart> recipe, std::span<const Solvent> plausible,
                      Worst worst, const std::string& authority) {
  const StandIns figures = stand_ins(plausible);
  Mixture mixture;
  if (recipe.empty()) {
    mixture.composition_known = false;
    mixture.parts.push_back(worst_of(plausible, figures, worst, authority));
    mixture.parts.back().share = MassShare::fraction(1);
    mixture.people_known = mixture.parts.back().limit.has_value();
    return mixture;
  }
  std::vector<Filling> fillings;
  double left = 1;
  for (const materials::SolventPart& entry : recipe) {
    const auto row = std::find_if(plausible.begin(), plausible.end(),
                                  [&](const Solvent& s) { return s.id == entry.solvent; });
    Filling filling;
    if (row == plausible.end()) {
      filling.part = worst_of(plausible, figures, worst, authority);
      filling.part.name = entry.solvent.text + ", taken as " + filling.part.name;
      mixture.composition_known = false;
    } else {
      filling.part = part_of(*row, figures, authority);
      filling.counts = !is_water(*row);
    }
    filling.low = entry.share.low.fraction();
    filling.high = entry.share.high.fraction();
    filling.harm = filling.counts ? harm(filling.part, worst) : 0;
    left -= filling.low;
    fillings.push_back(std::move(filling));
  }
  std::sort(fillings.begin(), fillings.end(), [](const Filling& a, const Filling& b) {
    return std::tuple(-a.harm, a.part.solvent) < std::tuple(-b.harm, b.part.solvent);
  });
  for (Filling& filling : fillings) {
    const double more = std::clamp(left, 0.0, filling.high - filling.low);
    left -= more;
    filling.part.share = MassShare::fraction(filling.low + more);
  }
  // Ranges too narrow to add to 1 (rounding in a safety sheet): the most harmful takes what is left.
  if (left > 0)
    fillings.front().part.share = MassShare::fraction(fillings.front().part.share.fraction() + left);
  for (Filling& filling : fillings) {
    if (!filling.counts || !(filling.part.share.fraction() > 0)) continue;
    mixture.people_known = mixture.people_known && filling.part.limit.has_value();
    mixture.parts.push_back(std::move(filling.part));
  }
  return mixture;
}

Mixture blended(std::span<const VolatileShare> liquids) {
  double whole = 0;
  for (const VolatileShare& liquid : liquids) whole += liquid.mass;
  DAMPWARD_PROMISE(whole > 0, "a blend has mass");
  Mixture blend;
  for (const VolatileShare& liquid : liquids) {
    if (!(liquid.mass > 0)) continue;
    blend.composition_known = blend.composition_known && liquid.mixture.composition_known;
    blend.people_known = blend.people_known && liquid.mixture.people_known;
    for (VolatilePart part : liquid.mixture.parts) {
      const double share = part.share.fraction() * liquid.mass / whole;
      const auto same = std::find_if(blend.parts.begin(), blend.parts.end(),
                                     [&](const VolatilePart& p) { return p.solvent == part.solvent; });
      if (same != blend.parts.end()) {
        same->share = MassShare::fraction(same->share.fraction() + share);
      } else {
        part.share = MassShare::fraction(share);
        blend.parts.push_back(std::move(part));
      }
    }
  }
  return blend;
}

}  // namespace dampward::room_air
