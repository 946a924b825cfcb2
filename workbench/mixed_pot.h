#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/civil_time.h"
#include "core/base/id.h"
#include "core/materials/liquid.h"
#include "core/quantity/range.h"

namespace dampward::workbench {

// So much of one lot into a pot.
struct PotShare {
  std::string item;
  LotId lot;
  Volume amount;
};

// One batch of lacquer mixed for the coats of one stretch of a day.
struct MixedPot {
  std::string id;  // "M1", in order of time
  materials::Method method = materials::Method::brush;
  std::vector<UnitId> units;  // in the order they are coated
  Instant mix, use_by;
  std::string use_by_because;
  double thinner_parts = 0;  // to one part of lacquer, by volume
  Range<Volume> ready, lacquer, thinner;
  Range<MassShare> non_volatile;
  std::vector<PotShare> lots;  // for the usual amount, first expired first
  Volume missing;              // of that amount, what no lot in date could give
  bool outlasted = false;      // one coat takes longer than the pot lives
};

}  // namespace dampward::workbench
