#pragma once

#include <string>

#include "core/equipment/kind.h"
#include "core/shop/shop.h"

namespace dampward::route {

// Who carries a set into and out of the oven or the dry box.
struct Carrying {
  int people = 1;
  bool by_hand_possible =
      true;             // false: what it usually weighs is beyond any team, and no lifting aid takes it
  std::string warning;  // one sentence; empty: one person carries it
};

// From the heaviest the kind may be, as it was received: what came out before the oven is not taken off, the safe side. Where only that
// end of the range is beyond the largest team, that team is asked for and told to weigh it. A lifting aid of the shop that takes it leaves
// one person. HSE and NIOSH figures: core/hazards/lifting.h.
Carrying carrying(const equipment::Kind& kind, const shop::Site& site);

}  // namespace dampward::route
