#include "core/route/lifting.h"

#include "core/base/format.h"
#include "core/hazards/lifting.h"

namespace dampward::route {

Carrying carrying(const equipment::Kind& kind, const shop::Site& site) {
  const Mass usual = kind.mass.value.typical, most = kind.mass.value.high;
  const auto weight = [](Mass mass) { return fixed(mass.in(kilogram), 0) + " kg"; };
  if (hazards::people_to_lift(most) == 1) return {};
  if (site.lifts && most <= *site.lifts)
    return {1, true, format("{} may weigh {}: lift it with the lifting aid.", kind.name, weight(most))};
  if (const auto team = hazards::people_to_lift(most))
    return {*team, true, format("{} may weigh {}: {} people lift it.", kind.name, weight(most), *team)};
  const bool possible = hazards::people_to_lift(usual).has_value();
  return {
      hazards::largest_team, possible,
      format("{} may weigh {}, more than {} people lift: weigh it first; {} people lift it if it is no more "
             "than {}, and a lifting aid does if it is.",
             kind.name, weight(most), hazards::largest_team, hazards::largest_team,
             fixed(hazards::team_lifts(hazards::largest_team).in(kilogram), 1) + " kg")};
}

}  // namespace dampward::route
