#pragma once

#include <string>
#include <vector>

#include "core/shop/shop.h"

namespace dampward::shop {

// One thing a shop's description gets wrong. `key` is the dotted path as the person wrote it
// (ovens.cabinet.heater), for whoever read the files to find the line; empty where it concerns the whole.
struct Fault {
  std::string key;
  std::string found;     // what stands there
  std::string expected;  // what would be right
};

// Everything that cannot be true: sizes, powers and flows that are not above zero or not numbers, shares
// outside 0 to 1, ranges out of order, settings upside down, hours that end before they begin, an oven
// without heat, lamps without distance or beam, names used twice. Values that are only unwise pass. Empty:
// fit to plan with.
std::vector<Fault> faults(const Shop& shop);

}  // namespace dampward::shop
