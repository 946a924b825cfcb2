#include "core/base/civil_time.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

using namespace dampward;
using namespace std::chrono;

namespace {

// A place that goes from UTC+1 to UTC+2 on 2026-03-29 01:00 UTC and back on 2026-10-25 01:00 UTC.
const WallClock summer_clock({{sys_days(2020y / 1 / 1), 1h},
                              {sys_days(2026y / 3 / 29) + 1h, 2h},
                              {sys_days(2026y / 10 / 25) + 1h, 1h}});

LocalTime local(std::string_view text) {
  return parse_local_time(text).value();
}

}  // namespace

TEST_CASE("a moment is written with the offset of its place") {
  const WallClock maputo(2h);
  const Instant instant = sys_days(2026y / 11 / 30) + 5h;
  CHECK(iso_text(instant, maputo) == "2026-11-30T07:00:00+02:00");
  CHECK(iso_text(instant, WallClock(-3h - 30min)) == "2026-11-30T01:30:00-03:30");
}

TEST_CASE("the wall clock changes with the season and for all time before its first change stands still") {
  CHECK(summer_clock.offset_at(sys_days(2026y / 7 / 1)) == 2h);
  CHECK(summer_clock.offset_at(sys_days(2026y / 12 / 1)) == 1h);
  CHECK(summer_clock.offset_at(sys_days(1999y / 7 / 1)) == 1h);
}

TEST_CASE("a time that a wall shows twice is the earlier one, a skipped one is the jump") {
  CHECK(summer_clock.instant(local("2026-10-25 02:30")) == sys_days(2026y / 10 / 25) + 30min);
  CHECK(summer_clock.instant(local("2026-03-29 02:30")) == sys_days(2026y / 3 / 29) + 1h);
}

TEST_CASE("dates and times are read in one form only") {
  CHECK(parse_date("2026-11-30") == Date(2026y / 11 / 30));
  CHECK(parse_date(" 2026-11-30 ") == Date(2026y / 11 / 30));
  CHECK(parse_date("2024-02-29").has_value());
  CHECK_FALSE(parse_date("2026-02-29").has_value());
  CHECK_FALSE(parse_date("30/11/2026").has_value());
  CHECK_FALSE(parse_date("2026-11-30x").has_value());
  CHECK(parse_local_time("2026-11-30T07:00") == local("2026-11-30 07:00:00"));
  CHECK_FALSE(parse_local_time("2026-11-30").has_value());
  CHECK_FALSE(parse_local_time("2026-11-30 25:00").has_value());
  CHECK(parse_time_of_day("24:00") == 24h);
  CHECK_FALSE(parse_time_of_day("24:01").has_value());
  CHECK_FALSE(parse_time_of_day("7:00").has_value());
}

TEST_CASE("a moment with offset is the same moment everywhere") {
  CHECK(parse_instant("2026-11-30T07:00:00+02:00") == parse_instant("2026-11-30T05:00Z"));
  CHECK(parse_instant("2026-11-30 01:30-03:30") == parse_instant("2026-11-30T05:00Z"));
  CHECK_FALSE(parse_instant("2026-11-30T07:00").has_value());
}

TEST_CASE("a day and a time of day are printed plainly") {
  CHECK(iso_text(Date(2026y / 1 / 5)) == "2026-01-05");
  CHECK(clock_text(local("2026-01-05 06:07")) == "06:07");
}

TEST_CASE("property: what the wall shows at an instant leads back to it, or to the earlier of two") {
  CHECK(rc::check([](int minutes_from_2020) {
    const Instant instant = sys_days(2020y / 1 / 1) + minutes(std::abs(minutes_from_2020 % 5'000'000));
    const Instant back = summer_clock.instant(summer_clock.local(instant));
    RC_ASSERT(back == instant || back == instant - 1h);
    RC_ASSERT(summer_clock.local(back) == summer_clock.local(instant));
    RC_ASSERT(parse_instant(iso_text(instant, summer_clock)) == instant);
  }));
}

TEST_CASE("property: no text makes the readers of dates stumble") {
  CHECK(rc::check([](const std::string& text) {
    (void)parse_date(text);
    (void)parse_local_time("2026-11-30 " + text);
    (void)parse_instant("2026-11-30T07:00" + text);
  }));
}
