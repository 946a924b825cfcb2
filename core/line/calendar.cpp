#include "core/line/calendar.h"

#include <algorithm>

namespace dampward::line {
namespace {

using namespace std::chrono;

// Adds the daily hours of one local day, cut to 0 … horizon.
void add_day(Calendar& spans, const std::vector<shop::DailyHours>& hours, local_days day,
             const WallClock& clock, Instant start, Minute horizon) {
  for (const shop::DailyHours& h : hours) {
    const Minute from = minute_after(clock.instant(day + h.from), start);
    const Minute to = minute_at(clock.instant(day + h.to), start);
    spans.push_back({std::max<Minute>(from, 0), std::min(to, horizon)});
  }
}

// Calls `each` with every local day that may touch 0 … horizon.
template <class Each>
void for_days(const WallClock& clock, Instant start, Minute horizon, Each each) {
  const auto first = floor<days>(clock.local(start)) - days(1);
  const auto last = floor<days>(clock.local(instant_of(horizon, start))) + days(1);
  for (auto day = first; day <= last; day += days(1)) each(local_days(day));
}

}  // namespace

Minute minute_at(Instant instant, Instant start) {
  return floor<minutes>(instant - start).count();
}

Minute minute_after(Instant instant, Instant start) {
  return ceil<minutes>(instant - start).count();
}

Instant instant_of(Minute minute, Instant start) {
  return start + minutes(minute);
}

Calendar calendar_of(const shop::WeekHours& hours, const WallClock& clock, Instant start, Minute horizon) {
  Calendar spans;
  for_days(clock, start, horizon, [&](local_days day) {
    const auto found = hours.days.find(weekday(day).c_encoding());
    if (found != hours.days.end()) add_day(spans, found->second, day, clock, start, horizon);
  });
  return tidied(std::move(spans));
}

Calendar daily(const std::vector<shop::DailyHours>& hours, const WallClock& clock, Instant start,
               Minute horizon) {
  Calendar spans;
  for_days(clock, start, horizon, [&](local_days day) { add_day(spans, hours, day, clock, start, horizon); });
  return tidied(std::move(spans));
}

Calendar tidied(Calendar spans) {
  std::erase_if(spans, [](const Span& span) { return span.from >= span.to; });
  std::sort(spans.begin(), spans.end(), [](const Span& a, const Span& b) { return a.from < b.from; });
  Calendar tidy;
  for (const Span& span : spans) {
    if (!tidy.empty() && span.from <= tidy.back().to) {
      tidy.back().to = std::max(tidy.back().to, span.to);
    } else {
      tidy.push_back(span);
    }
  }
  return tidy;
}

Calendar common(const Calendar& a, const Calendar& b) {
  Calendar both;
  for (std::size_t i = 0, j = 0; i < a.size() && j < b.size();) {
    const Span span{std::max(a[i].from, b[j].from), std::min(a[i].to, b[j].to)};
    if (span.from < span.to) both.push_back(span);
    a[i].to < b[j].to ? ++i : ++j;
  }
  return both;
}

Calendar joined(const Calendar& a, const Calendar& b) {
  Calendar either = a;
  either.insert(either.end(), b.begin(), b.end());
  return tidied(std::move(either));
}

Calendar without(const Calendar& a, const Calendar& b) {
  Calendar rest;
  std::size_t j = 0;
  for (const Span& span : a) {
    Minute from = span.from;
    while (j < b.size() && b[j].to <= from) ++j;
    for (std::size_t k = j; k < b.size() && b[k].from < span.to; ++k) {
      if (from < b[k].from) rest.push_back({from, b[k].from});
      from = std::max(from, b[k].to);
    }
    if (from < span.to) rest.push_back({from, span.to});
  }
  return rest;
}

}  // namespace dampward::line
