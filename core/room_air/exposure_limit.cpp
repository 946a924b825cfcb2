#include "core/room_air/exposure_limit.h"

#include <algorithm>
#include <vector>

namespace dampward::room_air {
namespace {

using Share = std::optional<VapourShare>;

Share lower(Share a, Share b) {
  if (!a || !b) return a ? a : b;
  return std::min(*a, *b);
}

Share long_term(const materials::ExposureLimit& row) {
  return row.eight_hours ? lower(row.eight_hours, row.ceiling) : lower(row.fifteen_minutes, row.ceiling);
}
Share short_term(const materials::ExposureLimit& row) {
  return lower(row.fifteen_minutes, row.ceiling);
}

template <class Pick>
std::optional<RulingLimit> ruling(const materials::Solvent& solvent, const std::string& authority,
                                  Pick pick) {
  std::optional<RulingLimit> best;
  for (const materials::ExposureLimit& row : solvent.limits) {
    const Share share = pick(row);
    if (!share || (!authority.empty() && row.authority != authority)) continue;
    const bool newer = !authority.empty() && best && row.year > best->year;
    const bool older = !authority.empty() && best && row.year < best->year;
    if (!best || newer || (!older && *share < best->limit))
      best = {*share, row.authority, row.year, row.mark};
  }
  return best;
}

}  // namespace

std::optional<RulingLimit> eight_hour_limit(const materials::Solvent& solvent, const std::string& authority) {
  return ruling(solvent, authority, long_term);
}

std::optional<RulingLimit> short_limit(const materials::Solvent& solvent, const std::string& authority) {
  return ruling(solvent, authority, short_term);
}

}  // namespace dampward::room_air
