#pragma once

#include <optional>
#include <string_view>

#include "core/quantity/quantity.h"

namespace dampward::room_air {

// Nothing hot, sparking or not rated for vapour stands within this of solvent work. Source: 29 CFR 1910.107(c)(6) in a summary
// (20 ft across) and a sign-trade manual (10 ft up), both read.
inline constexpr Length clear_across = 6.1 * metre;
inline constexpr Length clear_above = 10 * foot;

// Whether a source of heat may be on while solvent work goes on and until the purge is over. The same room never; a room without a
// name counts as the same; another room when it is far enough across, or high enough above. A missing distance counts as the same
// room.
bool may_be_on_together(std::string_view spray_room, std::string_view heat_room, std::optional<Length> across,
                        std::optional<Length> above = std::nullopt);

}  // namespace dampward::room_air
