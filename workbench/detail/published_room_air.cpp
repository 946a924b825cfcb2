#include "core/room_air/exposure_index.h"
#include "core/room_air/flammability.h"
#include "core/room_air/room.h"
#include "core/room_air/vapour.h"
#include "workbench/detail/published_quantities.h"

#include <limits>
#include <vector>

namespace dampward::workbench {
namespace {

using namespace room_air;

constexpr double no_number = std::numeric_limits<double>::quiet_NaN();

MolarMass molar_mass(PublishedInputs& in) {
  return in.number("molar_mass_g") * gram_per_mole;
}

double mixture_flammable_limit(PublishedInputs& in) {
  const std::vector<double> shares = in.numbers("share"), limits = in.numbers("limit_pct");
  if (shares.size() != limits.size()) return no_number;
  std::vector<Combustible> mix;
  for (std::size_t i = 0; i < shares.size(); ++i) mix.push_back({shares[i], VapourShare::percent(limits[i])});
  return mix.empty() ? no_number : le_chatelier(mix).percent();
}

double purge(PublishedInputs& in) {
  Room room;
  room.volume = 1 * cubic_metre;
  room.fresh_air = in.number("changes_per_h") * cubic_metre_per_hour;
  room.mixing = in.number("mixing");
  const double left = 1 - in.number("removed_pct") / 100;
  const auto time = purge_time(room, VapourShare::ppm(1000), VapourShare::ppm(1000 * left));
  return time ? time->in(minute) : no_number;
}

double dilution_air(PublishedInputs& in) {
  const AirState air{Temperature::celsius(in.number("t_c"))};
  const Volume hourly =
      vapour_volume(in.number("liquid_l_h") * litre, in.number("density_kg_m3") * kilogram_per_cubic_metre,
                    molar_mass(in), air);
  return air_needed(hourly / hour, VapourShare::ppm(in.number("limit_ppm")), in.number("mixing"))
      .in(cubic_metre_per_minute);
}

double time_weighted_average(PublishedInputs& in) {
  const std::vector<double> shares = in.numbers("ppm"), hours = in.numbers("hours");
  if (shares.size() != hours.size()) return no_number;
  std::vector<Breathed> shift;
  for (std::size_t i = 0; i < shares.size(); ++i)
    shift.push_back({VapourShare::ppm(shares[i]), hours[i] * hour});
  return eight_hour_average(shift).ppm();
}

double mixture_exposure(PublishedInputs& in) {
  const std::vector<double> shares = in.numbers("ppm"), limits = in.numbers("limit");
  if (shares.size() != limits.size()) return no_number;
  std::vector<Agent> agents;
  for (std::size_t i = 0; i < shares.size(); ++i) {
    agents.push_back({VapourShare::ppm(shares[i]), VapourShare::ppm(limits[i])});
  }
  return mixture_index(agents);
}

constexpr PublishedQuantity quantities[] = {
    {"mass_concentration", "mass of vapour in a cubic metre of air",
     [](PublishedInputs& in) {
       return mass_in_air(VapourShare::ppm(in.number("ppm")), molar_mass(in),
                          {Temperature::celsius(in.number("t_c"))})
           .in(milligram / cubic_metre);
     }},
    {"vapour_volume", "room that an evaporated mass takes as pure vapour",
     [](PublishedInputs& in) {
       const AirState air{Temperature::celsius(in.number("t_c")), in.number("p_pa") * pascal};
       return vapour_volume(in.number("mass_kg") * kilogram, molar_mass(in), air).in(cubic_foot);
     }},
    {"mixture_flammable_limit", "flammable limit of a mix of vapours", mixture_flammable_limit},
    {"purge_time", "time until a room is rid of so much of its vapour", purge},
    {"time_weighted_average", "eight-hour average of what somebody breathes", time_weighted_average},
    {"mixture_exposure", "sum of shares of the limits, to stay under 1", mixture_exposure},
    {"long_shift_factor", "what is left of a limit on a long shift",
     [](PublishedInputs& in) { return long_day_factor(in.number("hours") * hour); }},
    {"dilution_air", "fresh air that holds an evaporating liquid at a limit", dilution_air},
};

}  // namespace

std::span<const PublishedQuantity> room_air_quantities() {
  return quantities;
}

}  // namespace dampward::workbench
