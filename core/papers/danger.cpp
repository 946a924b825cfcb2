#include "core/papers/danger.h"

#include <algorithm>
#include <array>

namespace dampward::papers {

Danger danger_of(const std::string& hazard) {
  constexpr std::array volt = {"H01", "H02", "H14", "H15"};
  constexpr std::array hot = {"H27", "H28", "H29", "H40"};
  constexpr std::array fire = {"H20", "H25", "H26", "H30", "H32", "H33",
                               "H35", "H41", "H42", "H45", "H46", "H47"};
  const auto in = [&](const auto& ids) { return std::find(ids.begin(), ids.end(), hazard) != ids.end(); };
  if (in(volt)) return Danger::volt;
  if (in(hot)) return Danger::hot;
  return in(fire) ? Danger::fire : Danger::any;
}

}  // namespace dampward::papers
