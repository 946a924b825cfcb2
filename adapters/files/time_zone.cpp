#include "adapters/files/time_zone.h"

#include <date/tz.h>

#include <algorithm>
#include <stdexcept>

#include "core/base/format.h"
#include "core/base/text.h"

namespace dampward::files {
namespace {

constexpr std::string_view expected =
    "the name of a time zone such as \"Africa/Maputo\" or \"America/Puerto_Rico\"";

Problem unknown_zone(const std::string& zone) {
  std::vector<std::string> names;
  for (const date::time_zone& known : date::get_tzdb().zones) names.push_back(known.name());
  std::string guess = did_you_mean(zone, names);
  if (guess.empty()) {
    // "Maputo" alone, or with another continent.
    const std::string town = lower_case(zone.substr(zone.rfind('/') + 1));
    const auto same_town = std::find_if(names.begin(), names.end(), [&](const std::string& name) {
      return !town.empty() && lower_case(name.substr(name.rfind('/') + 1)) == town;
    });
    if (same_town != names.end()) guess = format("Did you mean \"{}\"?", *same_town);
  }
  return {{}, format("\"{}\", a time zone nobody knows", zone), std::string(expected), guess};
}

}  // namespace

Result<WallClock> wall_clock_of(const std::string& name) {
  try {
    const auto& zones = date::get_tzdb().zones;
    const auto zone = std::find_if(zones.begin(), zones.end(),
                                   [&](const date::time_zone& known) { return known.name() == name; });
    if (zone == zones.end()) return unknown_zone(name);
    const Instant last = date::sys_days(date::year(2060) / 1 / 1);
    std::vector<WallClock::Change> changes;
    for (Instant at = date::sys_days(date::year(1990) / 1 / 1); at < last;) {
      const date::sys_info info = zone->get_info(at);
      if (changes.empty() || changes.back().ahead_of_utc != info.offset) changes.push_back({at, info.offset});
      at = info.end;
    }
    return WallClock(std::move(changes));
  } catch (const std::runtime_error&) {
    return Problem{
        {}, "no time-zone tables on this machine", std::string(expected), "Install the package tzdata."};
  }
}

}  // namespace dampward::files
