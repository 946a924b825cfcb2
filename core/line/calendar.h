#pragma once

#include <vector>

#include "core/base/civil_time.h"
#include "core/line/problem.h"
#include "core/shop/shop.h"

namespace dampward::line {

// The hours of the week as minutes since `start`, from 0 to `horizon`. Counted on instants, so that the day on which the
// clocks change is an hour shorter or longer. Spans that touch (22:00-24:00 and 00:00-06:00) are one.
Calendar calendar_of(const shop::WeekHours& hours, const WallClock& clock, Instant start, Minute horizon);

// The same for hours that repeat every day, such as breaks.
Calendar daily(const std::vector<shop::DailyHours>& hours, const WallClock& clock, Instant start,
               Minute horizon);

// Whole minutes from `start` to `instant`: rounded down, or up where the later minute is the safe one.
Minute minute_at(Instant instant, Instant start);
Minute minute_after(Instant instant, Instant start);
Instant instant_of(Minute minute, Instant start);

// What the spans of both have in common; what either has; what the first has and the second has not.
Calendar common(const Calendar& a, const Calendar& b);
Calendar joined(const Calendar& a, const Calendar& b);
Calendar without(const Calendar& a, const Calendar& b);
// In order, merged where they touch or overlap, empty ones left out.
Calendar tidied(Calendar spans);

}  // namespace dampward::line
