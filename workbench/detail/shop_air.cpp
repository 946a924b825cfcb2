#include "workbench/detail/shop_air.h"

#include "workbench/detail/ruling_air.h"
#include "workbench/workshop.h"

namespace dampward::workbench {

Result<RulingAir> air_at_start(const Workshop& workshop, const records::RecordStore& records) {
  const auto queue = records.queue();
  if (!queue) return queue.problems();
  const auto readings = records.air();
  if (!readings) return readings.problems();
  const shop::Site& site = workshop.shop.site;
  if (!queue->starts) {
    return Problem{{"queue.csv", 1, 0},
                   "no start of the work, so nobody knows which reading of the air rules",
                   "a first line such as \"# start: 2026-11-30 07:00\"",
                   "Or say what the air is like with --air."};
  }
  return ruling_air(*readings, workshop.climate ? &*workshop.climate : nullptr,
                    site.clock.instant(*queue->starts), site, workshop.shop.spray);
}

}  // namespace dampward::workbench
