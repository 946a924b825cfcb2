#include "core/room_air/separation.h"

#include "core/base/text.h"

namespace dampward::room_air {

namespace {

// A slip of the pen must not make two rooms of one.
std::string room_name(std::string_view written) {
  return lower_case(trimmed(written));
}

}  // namespace

bool may_be_on_together(std::string_view spray_room, std::string_view heat_room, std::optional<Length> across,
                        std::optional<Length> above) {
  const std::string spray = room_name(spray_room), heat = room_name(heat_room);
  if (spray.empty() || heat.empty() || spray == heat) return false;
  return (across && *across > clear_across) || (above && *above > clear_above);
}

}  // namespace dampward::room_air
