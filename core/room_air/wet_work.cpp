#include "core/room_air/wet_work.h"

#include "core/base/promise.h"

namespace dampward::room_air {

double wet_in_oven(Mass solvent, const Mixture& mixture, Volume chamber, AirState oven) {
  DAMPWARD_PROMISE(chamber > Volume{}, "an oven has a chamber");
  const auto mix = evaporated(mixture, oven);
  if (!mix) return 0;
  const double share = solvent / kilogram * mix->vapour_per_kilogram / chamber;
  return share / mix->lower_limit.fraction();
}

}  // namespace dampward::room_air
