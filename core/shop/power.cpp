#include "core/shop/power.h"

#include <algorithm>

namespace dampward::shop {

Power draws(const Oven& oven) {
  Power heat = oven.heater.value_or(Power{});
  if (oven.lamps) heat += oven.lamps->count * oven.lamps->each;
  return std::min(heat, oven.supply);
}

}  // namespace dampward::shop
