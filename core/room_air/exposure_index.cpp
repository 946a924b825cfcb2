#include "core/room_air/exposure_index.h"

#include <algorithm>

#include "core/base/promise.h"

namespace dampward::room_air {

VapourShare eight_hour_average(std::span<const Breathed> day) {
  double sum = 0;
  for (const Breathed& stretch : day) sum += stretch.share.fraction() * stretch.time.in(8 * hour);
  return VapourShare::fraction(sum);
}

double mixture_index(std::span<const Agent> agents) {
  double index = 0;
  for (const Agent& agent : agents) {
    DAMPWARD_PROMISE(agent.limit.fraction() > 0, "an exposure limit lies above zero");
    index += agent.share.fraction() / agent.limit.fraction();
  }
  return index;
}

std::optional<double> mixture_index(const Mixture& mixture, VapourShare vapour) {
  if (!mixture.people_known) return std::nullopt;
  double moles = 0, index = 0;
  for (const VolatilePart& part : mixture.parts) moles += part.share.fraction() / part.molar_mass.si();
  for (const VolatilePart& part : mixture.parts) {
    const double amount = part.share.fraction() / part.molar_mass.si() / moles;
    index += amount * vapour.fraction() / part.limit->limit.fraction();
  }
  return index;
}

double long_day_factor(Duration shift) {
  const double hours = shift.in(hour);
  if (hours <= 8) return 1;
  return std::max(0.0, 8 / hours * (24 - hours) / 16);
}

}  // namespace dampward::room_air
