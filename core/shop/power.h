#pragma once

#include "core/shop/shop.h"

namespace dampward::shop {

// What an oven takes while it heats: heater and lamps together, but never more than its socket gives.
Power draws(const Oven& oven);

}  // namespace dampward::shop
