#include "workbench/mask_sets.h"

#include <algorithm>
#include <cmath>

namespace dampward::workbench {

std::vector<papers::MaskSet> mask_sets(const Plan& plan) {
  std::vector<papers::MaskSet> sets;
  for (const equipment::Kind& kind : plan.kinds) {
    papers::MaskSet set;
    set.id = kind.id.text;
    set.kind = kind.name;
    set.shop = plan.shop;
    set.units = 0;
    for (const UnitPlan& unit : plan.units) {
      if (unit.kind != kind.id) continue;
      ++set.units;
      // Units of a kind are masked alike; a part that only one of them masks is cut too.
      for (const route::ListedPart& listed : unit.lists.mask) {
        const bool known = std::any_of(set.pieces.begin(), set.pieces.end(), [&](const auto& piece) {
          return piece.part == listed.name && piece.covers == listed.what;
        });
        if (known) continue;
        const equipment::Part* part = equipment::find_part(kind, listed.part);
        set.pieces.push_back({listed.name, listed.what,
                              std::max(1, static_cast<int>(std::ceil(listed.count))),
                              part == nullptr ? std::nullopt : part->cut});
      }
    }
    if (!set.pieces.empty()) sets.push_back(std::move(set));
  }
  return sets;
}

}  // namespace dampward::workbench
