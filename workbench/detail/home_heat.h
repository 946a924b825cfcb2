#pragma once

#include <optional>

#include "core/drying/wall.h"
#include "workbench/leaflet.h"

namespace dampward::workbench {

// A box without thermostat: it comes to rest where its losses eat up what the lamp or the sun puts in.
//   T = air + P/G,   G = U A + half the box's air an hour         (heat balance; U from data/ovens/walls.csv)
// The set's own place may be a quarter of the rise warmer or cooler than that, and the day 4 K: estimates.
inline constexpr double place_spread = 0.25;
inline constexpr TemperatureStep day_spread = 4 * kelvin;

struct HomeBox {
  BoxSize inside;
  drying::Wall wall;
};

HeatConductance loss_of(const HomeBox& box, HeatTransferCoefficient u);

// Between what the set's place may be, and what a thermometer amid the box may show.
struct HomeWarmth {
  Temperature coolest, usual, hottest;
  Temperature reading_low, reading_high;
};
// `least` and `most` of the heat: a lamp gives its watts, the sun now more, now less.
HomeWarmth warmth_of(const HomeBox& box, Power least, Power usual, Power most, Temperature air);

// The most heat at which the hottest place stays at or under `allowed`; none: the air itself is hotter.
std::optional<Power> strongest_heat(const HomeBox& box, Temperature allowed, Temperature air);

// Sun on a blackened lid, absorptance 0.9: 1000 W/m² at its highest (the irradiance of IEC 60904-3, from memory), 600 usually and
// 400 at least between ten and three on a day that counts as sunny (estimates).
Power sun_on(Area black, double watts_per_square_metre);
inline constexpr double sun_least = 400, sun_usual = 600, sun_most = 1000;
inline constexpr Duration sunny_hours = 5 * hour;  // of a sunny day

// The strongest of the lamps one can buy (7 to 150 W) that gives no more than this; none: even the smallest does.
std::optional<Power> usual_lamp(Power at_most);

}  // namespace dampward::workbench
