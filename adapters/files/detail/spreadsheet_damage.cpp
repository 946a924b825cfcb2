#include "adapters/files/detail/spreadsheet_damage.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <map>

#include "core/base/format.h"
#include "core/base/text.h"

namespace dampward::files::detail {
namespace {

bool all_digits(std::string_view text) {
  return !text.empty() && std::all_of(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; });
}

std::optional<int> number_in(std::string_view text) {
  if (!all_digits(text) || text.size() > 6) return std::nullopt;
  int value = 0;
  std::from_chars(text.data(), text.data() + text.size(), value);
  return value;
}

std::optional<Date> date_of(int year, int month, int day) {
  if (month < 1 || day < 1) return std::nullopt;
  const Date date{std::chrono::year(year), std::chrono::month(static_cast<unsigned>(month)),
                  std::chrono::day(static_cast<unsigned>(day))};
  return date.ok() ? std::optional(date) : std::nullopt;
}

// The three numbers of "04/12/2026", "4.12.2026" or "2026-25-12".
std::optional<std::array<int, 3>> three_numbers(std::string_view text) {
  std::array<int, 3> numbers{};
  for (char mark : {'/', '.', '-'}) {
    const auto pieces = split(text, mark);
    if (pieces.size() != 3) continue;
    for (std::size_t i = 0; i < 3; ++i) {
      const auto number = number_in(trimmed(pieces[i]));
      if (!number) return std::nullopt;
      numbers[i] = *number;
    }
    return numbers;
  }
  return std::nullopt;
}

}  // namespace

bool shortened_serial(std::string_view serial) {
  const std::size_t e = serial.find_first_of("eE");
  if (e == std::string_view::npos || e + 2 >= serial.size()) return false;
  if (serial[e + 1] != '+' && serial[e + 1] != '-') return false;
  std::string mantissa(serial.substr(0, e));
  std::erase_if(mantissa, [](char c) { return c == '.' || c == ','; });
  return all_digits(mantissa) && all_digits(serial.substr(e + 2));
}

std::optional<std::string> with_lost_zeros(std::string_view serial, const std::vector<std::string>& all) {
  if (!all_digits(serial) || serial.front() == '0') return std::nullopt;
  std::map<std::size_t, int> padded_lengths;
  for (const std::string& other : all) {
    if (all_digits(other) && other.front() == '0' && other.size() > serial.size())
      ++padded_lengths[other.size()];
  }
  if (padded_lengths.size() != 1) return std::nullopt;
  return std::string(padded_lengths.begin()->first - serial.size(), '0') + std::string(serial);
}

std::string how_to_write(std::string_view text) {
  text = trimmed(text);
  if (const auto day_number = number_in(text); day_number && *day_number > 20'000 && *day_number < 80'000) {
    // Spreadsheets count days from 30 December 1899.
    const Date date{std::chrono::sys_days(std::chrono::year(1899) / 12 / 30) +
                    std::chrono::days(*day_number)};
    return format("This is a spreadsheet's day number: write {}.", iso_text(date));
  }
  const auto n = three_numbers(text);
  if (!n) return "";
  const auto [a, b, c] = *n;
  const bool year_first = a > 31;
  const int year = year_first ? a : c < 100 ? 2000 + c : c;
  const auto day_first = year_first ? date_of(year, c, b) : date_of(year, b, a);
  const auto month_first = year_first ? date_of(year, b, c) : date_of(year, a, b);
  if (day_first && month_first && *day_first != *month_first && !year_first) {
    return format("Day and month may be turned round: write {} or {}, whichever is meant.",
                  iso_text(*day_first), iso_text(*month_first));
  }
  if (month_first && (year_first || !day_first)) return format("Write {}.", iso_text(*month_first));
  if (day_first) return format("Write {}.", iso_text(*day_first));
  return "";
}

std::optional<Date> turned_round(Date date) {
  const auto turned =
      date_of(static_cast<int>(date.year()), static_cast<int>(static_cast<unsigned>(date.day())),
              static_cast<int>(static_cast<unsigned>(date.month())));
  return turned && *turned != date ? turned : std::nullopt;
}

}  // namespace dampward::files::detail
