#include "core/room_air/air_needs.h"

namespace dampward::room_air {

AirNeeds air_needs(MassFlow volatiles, const Mixture& worst_for_fire, const Mixture& worst_for_people,
                   FireShare share, double mixing, AirState air) {
  AirNeeds needs;
  if (const auto mix = evaporated(worst_for_fire, air)) {
    const VolumeFlow vapour = (volatiles / kilogram_per_second) * (mix->vapour_per_kilogram / second);
    needs.fire = air_needed(vapour, VapourShare::fraction(share.share * mix->lower_limit.fraction()), mixing);
  }
  if (!worst_for_people.people_known) return needs;
  VolumeFlow people;
  for (const VolatilePart& part : worst_for_people.parts) {
    const VolumeFlow vapour =
        vapour_volume(part.share.fraction() * (volatiles * second), part.molar_mass, air) / second;
    people += air_needed(vapour, part.limit->limit, mixing);
  }
  needs.people = people;
  return needs;
}

}  // namespace dampward::room_air
