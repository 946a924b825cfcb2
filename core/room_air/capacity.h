#pragma once

#include <optional>
#include <string>

#include "core/quantity/quantity.h"
#include "core/quantity/shares.h"
#include "core/room_air/flammability.h"
#include "core/room_air/room.h"
#include "core/shop/shop.h"

namespace dampward::room_air {

// How much of the lower flammable limit a place may reach. 10 % wherever people stand; 25 % only in a booth stated to be
// ventilated, whose fan moves its air at 0.51 m/s or more through its face (width by height). Sources: 29 CFR 1910.146(b) and WAC 296-304-03009 (10 % in confined spaces, ship work), WAC 296-24-37003
// and -37019 (25 % in booths and ovens), all read; for an ordinary room no rule was read, so 10 % is planned.
struct FireShare {
  double share = 0.10;
  std::string reason;
};
FireShare fire_share(const shop::SprayPlace& place);

// What the place allows before fire safety is lost. It says nothing of people: their limit comes 10 to 100 times sooner.
struct Capacity {
  VapourShare allowed;         // share of vapour in the air
  VolumeFlow vapour;           // steady release the fresh air carries off; 0 without fresh air
  Volume vapour_in_still_air;  // released in all before it is reached with no fan at all
  MassFlow volatiles;          // the same steady release as liquid
  Mass volatiles_in_still_air;
};
Capacity capacity(const Room& room, const EvaporatedMix& mix, FireShare share);

// Units that may give off their solvent at the same time, each `volatiles` over `released_over` (coats and flashes of one unit).
// 0: not even one. Promise: a unit releases something.
int units_at_once(const Room& room, const EvaporatedMix& mix, FireShare share, Mass volatiles,
                  Duration released_over);

}  // namespace dampward::room_air
