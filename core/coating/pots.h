#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include "core/base/civil_time.h"
#include "core/quantity/quantity.h"
#include "core/quantity/range.h"

namespace dampward::coating {

// Mix that is wanted at a time: one coat on one unit, as it goes into the gun or on the brush.
struct MixUse {
  Instant starts, ends;
  Range<Volume> ready;
};

// One batch of mix.
struct Pot {
  Instant mixed;   // just before its first use
  Instant use_by;  // what is left then is thrown away
  Range<Volume> ready;
  std::vector<std::size_t> uses;  // places in the list of uses, in order of time
  bool outlasted = false;         // one coat takes longer than the pot lives: mix it in smaller batches
};

// The pots a day's coats are served from, in order of time. A pot takes every use that ends before its use-by: the pot life after
// mixing, and never later than the end of that day on the wall's clock, because solvent leaves an open pot overnight (common
// practice, no source). Without a pot life only the day ends it. Opening a pot as late as possible and filling each before the
// next gives the fewest pots. Promise: no use ends before it starts.
std::vector<Pot> pots(std::span<const MixUse> uses, std::optional<Duration> pot_life, const WallClock& clock);

}  // namespace dampward::coating
