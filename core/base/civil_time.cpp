#include "core/base/civil_time.h"

#include <algorithm>

#include "core/base/format.h"
#include "core/base/promise.h"
#include "core/base/text.h"

namespace dampward {
namespace {

using namespace std::chrono;

// Exactly `digits` decimal digits at the front of `text`, taken off it.
std::optional<int> take_digits(std::string_view& text, std::size_t digits) {
  if (text.size() < digits) return std::nullopt;
  int value = 0;
  for (char c : text.substr(0, digits)) {
    if (c < '0' || c > '9') return std::nullopt;
    value = value * 10 + (c - '0');
  }
  text.remove_prefix(digits);
  return value;
}

bool take(std::string_view& text, char expected) {
  if (text.empty() || text.front() != expected) return false;
  text.remove_prefix(1);
  return true;
}

std::optional<Date> take_date(std::string_view& text) {
  const auto y = take_digits(text, 4);
  if (!y || !take(text, '-')) return std::nullopt;
  const auto m = take_digits(text, 2);
  if (!m || !take(text, '-')) return std::nullopt;
  const auto d = take_digits(text, 2);
  if (!d) return std::nullopt;
  const Date date{year(*y), month(static_cast<unsigned>(*m)), day(static_cast<unsigned>(*d))};
  if (!date.ok()) return std::nullopt;
  return date;
}

std::optional<seconds> take_time(std::string_view& text) {
  const auto h = take_digits(text, 2);
  if (!h || *h > 24 || !take(text, ':')) return std::nullopt;
  const auto m = take_digits(text, 2);
  if (!m || *m > 59) return std::nullopt;
  int s = 0;
  if (take(text, ':')) {
    const auto written = take_digits(text, 2);
    if (!written || *written > 59) return std::nullopt;
    s = *written;
  }
  const seconds time = hours(*h) + minutes(*m) + seconds(s);
  if (time > hours(24)) return std::nullopt;
  return time;
}

std::optional<LocalTime> take_local_time(std::string_view& text) {
  const auto date = take_date(text);
  if (!date || (!take(text, 'T') && !take(text, ' '))) return std::nullopt;
  const auto time = take_time(text);
  if (!time) return std::nullopt;
  return local_days(*date) + *time;
}

}  // namespace

WallClock::WallClock(seconds ahead_of_utc) : changes_{{Instant{}, ahead_of_utc}} {}

WallClock::WallClock(std::vector<Change> changes) : changes_(std::move(changes)) {
  DAMPWARD_PROMISE(!changes_.empty(), "a wall clock knows at least one offset");
}

seconds WallClock::offset_at(Instant instant) const {
  const auto later = std::upper_bound(changes_.begin(), changes_.end(), instant,
                                      [](Instant t, const Change& change) { return t < change.from; });
  return later == changes_.begin() ? changes_.front().ahead_of_utc : std::prev(later)->ahead_of_utc;
}

LocalTime WallClock::local(Instant instant) const {
  return LocalTime{(instant + offset_at(instant)).time_since_epoch()};
}

Instant WallClock::instant(LocalTime local_time) const {
  const sys_seconds as_if_utc{local_time.time_since_epoch()};
  for (std::size_t i = 0; i < changes_.size(); ++i) {
    const Instant candidate = as_if_utc - changes_[i].ahead_of_utc;
    const bool last = i + 1 == changes_.size();
    if (last || candidate < changes_[i + 1].from) {
      return i == 0 ? candidate : std::max(candidate, changes_[i].from);
    }
  }
  return as_if_utc - changes_.back().ahead_of_utc;
}

std::string iso_text(Date date) {
  return format("{:04}-{:02}-{:02}", static_cast<int>(date.year()), static_cast<unsigned>(date.month()),
                static_cast<unsigned>(date.day()));
}

std::string clock_text(LocalTime time) {
  const hh_mm_ss clock(time - floor<days>(time));
  return format("{:02}:{:02}", clock.hours().count(), clock.minutes().count());
}

std::string iso_text(Instant instant, const WallClock& clock) {
  const LocalTime local = clock.local(instant);
  const auto day = floor<days>(local);
  const hh_mm_ss time(local - day);
  const auto offset = duration_cast<minutes>(clock.offset_at(instant)).count();
  const auto size = offset < 0 ? -offset : offset;
  return format("{}T{:02}:{:02}:{:02}{}{:02}:{:02}", iso_text(Date(day)), time.hours().count(),
                time.minutes().count(), time.seconds().count(), offset < 0 ? '-' : '+', size / 60, size % 60);
}

std::optional<Date> parse_date(std::string_view text) {
  text = trimmed(text);
  const auto date = take_date(text);
  return text.empty() ? date : std::nullopt;
}

std::optional<LocalTime> parse_local_time(std::string_view text) {
  text = trimmed(text);
  const auto time = take_local_time(text);
  return text.empty() ? time : std::nullopt;
}

std::optional<Instant> parse_instant(std::string_view text) {
  text = trimmed(text);
  const auto local = take_local_time(text);
  if (!local) return std::nullopt;
  const sys_seconds as_if_utc{local->time_since_epoch()};
  if (text == "Z") return as_if_utc;
  const bool behind = take(text, '-');
  if (!behind && !take(text, '+')) return std::nullopt;
  const auto ahead = take_time(text);
  if (!ahead || !text.empty()) return std::nullopt;
  return behind ? as_if_utc + *ahead : as_if_utc - *ahead;
}

std::optional<minutes> parse_time_of_day(std::string_view text) {
  text = trimmed(text);
  const auto time = take_time(text);
  if (!time || !text.empty()) return std::nullopt;
  return duration_cast<minutes>(*time);
}

}  // namespace dampward
