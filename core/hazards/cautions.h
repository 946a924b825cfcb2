#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/base/id.h"
#include "core/base/result.h"
#include "core/hazards/hazard.h"

namespace dampward::hazards {

// The steps a row may name, `all` among them.
const std::vector<std::string>& known_steps();

// Every hazard the shop is told of. Nothing in it can be switched off.
class HazardTable {
 public:
  HazardTable() = default;

  // Problems: an id that is missing or stands twice, a step nobody works at, a row without guard, source or deferral.
  static Result<HazardTable> of(std::vector<Hazard> rows);

  const std::vector<Hazard>& rows() const { return rows_; }

  // nullptr: no such row.
  const Hazard* find(const HazardId& id) const;

  // Rows of this step, then the rows that hold for every step, both in table order.
  std::vector<Hazard> cautions_for(std::string_view step) const;

 private:
  std::vector<Hazard> rows_;
};

}  // namespace dampward::hazards
