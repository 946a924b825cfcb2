#pragma once

#include <optional>
#include <string>
#include <variant>

#include "core/equipment/kind.h"
#include "core/materials/table.h"
#include "core/quantity/figure.h"

namespace dampward::drying {

using materials::MaterialTable;

// How hot one part may become, and how that is known.
struct PartLimit {
  PartId part;
  Temperature limit;
  TemperatureStep margin;
  Mark mark = Mark::doubtful;
  std::string source;
  MaterialId material;  // which material set it; empty where the shop's or the kind's own figure did
  std::string why;      // what happens above it
  bool from_ignorance =
      false;  // low only because nobody measured: several plausible materials, or a figure with a wide spread
  std::optional<Temperature> likely_if_measured;  // what a measurement would most likely show
  std::optional<Temperature> best_if_measured;    // the highest it could show
  std::string settle;                             // the cheapest measurement, in words

  Temperature allowed() const { return limit - margin; }
};

// Why a part may not be heated at all, and what would change that.
struct Refusal {
  PartId part;
  std::string reason;
  std::string settle;
};

// Distance a bake keeps below a limit that came without its own margin: 5 K below a rating that was read, 10
// K below a softening or melting point that was measured or computed, 15 K below what is remembered,
// estimated or doubtful. Estimates.
TemperatureStep default_margin(Mark mark);

// The limit of a part that stays in the oven. A limit measured by the shop rules alone. Otherwise the lowest
// of limit less margin among the part's given limit and the low figures of all its plausible materials. A
// part that has neither, or a plausible material without a limit, is refused: nothing is assumed safe.
std::variant<PartLimit, Refusal> resolve_limit(const equipment::Part& part, const MaterialTable& materials);

// The same part after a measurement showed this limit (margin as for a measured one).
PartLimit as_if_measured(const PartLimit& limit, Temperature shown);

}  // namespace dampward::drying
