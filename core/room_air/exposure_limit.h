#pragma once

#include <optional>
#include <string>

#include "core/materials/liquid.h"

namespace dampward::room_air {

// The limit that rules for one solvent, and whose it is.
struct RulingLimit {
  VapourShare limit;
  std::string authority;
  int year = 0;
  Mark mark = Mark::doubtful;
};

// Averaged over eight hours. A ceiling stands in as an eight-hour limit where an authority gives nothing else; a fifteen-minute
// limit does so too, since an average may never lie above it. None: no authority of the table gives a figure, so nobody may rely
// on air alone.
// The lowest figure of all authorities rules; naming one authority takes only its figures (the latest edition of them).
std::optional<RulingLimit> eight_hour_limit(const materials::Solvent& solvent,
                                            const std::string& authority = "");

// Not to be passed in any fifteen minutes: the lowest short-term limit or ceiling. None: no authority gives one.
std::optional<RulingLimit> short_limit(const materials::Solvent& solvent, const std::string& authority = "");

}  // namespace dampward::room_air
