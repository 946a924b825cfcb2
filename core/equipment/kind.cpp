#include "core/equipment/kind.h"

#include <algorithm>

namespace dampward::equipment {

Area outer_area(const Kind& kind) {
  const Length l = kind.length.value.typical, w = kind.width.value.typical, h = kind.height.value.typical;
  return 2 * (l * w + w * h + h * l);
}

Volume outer_volume(const Kind& kind) {
  return kind.length.value.high * kind.width.value.high * kind.height.value.high;
}

const Part* find_part(const Kind& kind, const PartId& id) {
  const auto part =
      std::find_if(kind.parts.begin(), kind.parts.end(), [&](const Part& p) { return p.id == id; });
  return part == kind.parts.end() ? nullptr : &*part;
}

}  // namespace dampward::equipment
