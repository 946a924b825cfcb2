#pragma once

#include <span>
#include <string>
#include <string_view>

#include "core/base/result.h"
#include "core/shop/shop.h"

namespace dampward::files {

// "10:00-10:15". Faults (place left to the caller): no such time, an end that is not after its beginning.
Result<shop::DailyHours> daily_hours_from_text(std::string_view text);

// Lines such as "mon-fri 07:00-15:30", "sat,sun 08:00-12:00", "daily 06:00-22:00", "always". Faults: an unknown day, times
// as above, hours of one day that overlap.
Result<shop::WeekHours> week_hours_from_text(std::span<const std::string> lines);

}  // namespace dampward::files
