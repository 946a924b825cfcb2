#include "core/line/calendar.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

namespace dampward::line {
namespace {

using namespace std::chrono;

Instant at_utc(int y, unsigned m, unsigned d, int h) {
  return sys_days(std::chrono::year(y) / static_cast<int>(m) / static_cast<int>(d)) + hours(h);
}

shop::WeekHours every_day(std::vector<shop::DailyHours> hours) {
  shop::WeekHours week;
  for (unsigned d = 0; d < 7; ++d) week.days[d] = hours;
  return week;
}

bool in(const Calendar& spans, Minute m) {
  for (const Span& s : spans) {
    if (s.from <= m && m < s.to) return true;
  }
  return false;
}

Calendar some(const std::vector<int>& edges) {
  Calendar spans;
  for (std::size_t i = 0; i + 1 < edges.size(); i += 2)
    spans.push_back({edges[i] % 50, edges[i] % 50 + edges[i + 1] % 9});
  return tidied(spans);
}

}  // namespace

TEST_CASE("a week's hours become minutes since the plan's start, on its weekdays only") {
  shop::WeekHours week;
  week.days[1] = {{7h, 15h + 30min}};  // Monday
  const WallClock clock(2h);
  const Instant start = at_utc(2026, 11, 30, 5);  // Monday 07:00 there
  const Calendar spans = calendar_of(week, clock, start, 8 * 24 * 60);
  CHECK(spans == Calendar{{0, 510}, {7 * 1440, 7 * 1440 + 510}});
}

TEST_CASE("a plan that starts amid a shift gets the rest of it") {
  const Calendar spans = calendar_of(every_day({{7h, 15h}}), WallClock(0h), at_utc(2026, 11, 30, 9), 600);
  CHECK(spans == Calendar{{0, 360}});
}

TEST_CASE("a night shift written as two days is one span") {
  const Calendar spans =
      calendar_of(every_day({{0h, 6h}, {22h, 24h}}), WallClock(0h), at_utc(2026, 11, 30, 12), 1440);
  CHECK(spans == Calendar{{600, 1080}});
}

TEST_CASE("the night on which clocks go forward is an hour shorter, and an hour longer when they go back") {
  // Central European rules of 2026: forward at 01:00 UTC on 29 March, back at 01:00 UTC on 25 October.
  const WallClock clock({{Instant{}, 1h}, {at_utc(2026, 3, 29, 1), 2h}, {at_utc(2026, 10, 25, 1), 1h}});
  const auto night = every_day({{0h, 6h}});
  CHECK(calendar_of(night, clock, at_utc(2026, 3, 28, 12), 1440) == Calendar{{660, 660 + 300}});
  CHECK(calendar_of(night, clock, at_utc(2026, 10, 24, 12), 1440) == Calendar{{600, 600 + 420}});
  // By day nothing is different but where it stands against the day before.
  const auto day = calendar_of(every_day({{7h, 15h}}), clock, at_utc(2026, 3, 28, 0), 2880);
  CHECK(day == Calendar{{360, 840}, {360 + 1380, 840 + 1380}});
}

TEST_CASE("breaks repeat every day, and a start within a minute is rounded to the safe side") {
  const Instant start = at_utc(2026, 11, 30, 7) + 30s;
  CHECK(daily({{10h, 10h + 15min}}, WallClock(0h), start, 1440) == Calendar{{180, 194}});
  CHECK(minute_at(start + 90s, start) == 1);
  CHECK(minute_after(start + 90s, start) == 2);
  CHECK(instant_of(2, start) == start + 2min);
}

TEST_CASE("what two calendars have together, either, or only the one, is right minute by minute") {
  CHECK(rc::check([](const std::vector<int>& x, const std::vector<int>& y) {
    std::vector<int> small_x, small_y;
    for (int v : x) small_x.push_back(v < 0 ? -(v + 1) % 1000 : v % 1000);
    for (int v : y) small_y.push_back(v < 0 ? -(v + 1) % 1000 : v % 1000);
    const Calendar a = some(small_x), b = some(small_y);
    const Calendar both = common(a, b), either = joined(a, b), only = without(a, b);
    for (Minute m = -1; m < 70; ++m) {
      RC_ASSERT(in(both, m) == (in(a, m) && in(b, m)));
      RC_ASSERT(in(either, m) == (in(a, m) || in(b, m)));
      RC_ASSERT(in(only, m) == (in(a, m) && !in(b, m)));
    }
  }));
}

}  // namespace dampward::line
