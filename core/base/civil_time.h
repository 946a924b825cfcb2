#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace dampward {

// A moment, the same everywhere.
using Instant = std::chrono::sys_seconds;
// A date with time of day as a clock on one wall shows it.
using LocalTime = std::chrono::local_seconds;
using Date = std::chrono::year_month_day;

// The wall clock of one place over the years: how far it stands ahead of UTC from each instant on.
// Filled by whoever can read the time-zone tables; a clock without changes is a fixed offset.
class WallClock {
 public:
  struct Change {
    Instant from;
    std::chrono::seconds ahead_of_utc;
  };

  explicit WallClock(std::chrono::seconds ahead_of_utc);
  // The first change also holds for all time before it; changes stand in order. Promise: not empty.
  explicit WallClock(std::vector<Change> changes);

  std::chrono::seconds offset_at(Instant instant) const;
  LocalTime local(Instant instant) const;
  // The earlier instant where the wall shows a time twice; where a time is skipped, the instant of the jump.
  Instant instant(LocalTime local) const;

 private:
  std::vector<Change> changes_;
};

// 2026-11-25T08:30:00+03:00 (ISO 8601 with offset).
std::string iso_text(Instant instant, const WallClock& clock);
// 2026-11-25
std::string iso_text(Date date);
// 08:30
std::string clock_text(LocalTime time);

// "2026-11-25"; nothing when it is no such date.
std::optional<Date> parse_date(std::string_view text);
// "2026-11-25 08:30", "2026-11-25T08:30", with optional seconds.
std::optional<LocalTime> parse_local_time(std::string_view text);
// As above followed by "Z" or an offset such as "+03:00".
std::optional<Instant> parse_instant(std::string_view text);
// "08:30" as time of day.
std::optional<std::chrono::minutes> parse_time_of_day(std::string_view text);

}  // namespace dampward
