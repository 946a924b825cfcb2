#include "core/room_air/separation.h"

namespace dampward::room_air {

bool may_be_on_together(std::string_view spray_room, std::string_view heat_room, std::optional<Length> across,
                        std::optional<Length> above) {
  if (spray_room.empty() || heat_room.empty() || spray_room == heat_room) return false;
  return (across && *across > clear_across) || (above && *above > clear_above);
}

}  // namespace dampward::room_air
