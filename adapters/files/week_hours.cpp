#include "adapters/files/week_hours.h"

#include <algorithm>
#include <optional>
#include <vector>

#include "core/base/format.h"
#include "core/base/text.h"

namespace dampward::files {
namespace {

using shop::DailyHours;
using shop::WeekHours;

const std::vector<std::string> day_names = {"sun", "mon", "tue", "wed", "thu", "fri", "sat"};
constexpr std::string_view shift_like = "hours such as \"mon-fri 07:00-15:30\" or \"daily 06:00-22:00\"";

std::string with_plain_dashes(std::string_view text) {
  std::string plain(text);
  for (std::string_view dash : {"–", "—", "−"}) {
    for (std::size_t at = plain.find(dash); at != std::string::npos; at = plain.find(dash)) {
      plain.replace(at, dash.size(), "-");
    }
  }
  return plain;
}

std::optional<unsigned> day_named(std::string_view text) {
  const std::string name = lower_case(trimmed(text)).substr(0, 3);
  const auto found = std::find(day_names.begin(), day_names.end(), name);
  if (found == day_names.end()) return std::nullopt;
  return static_cast<unsigned>(found - day_names.begin());
}

// The days of "mon-fri", "sat,sun" or "daily", and "sat-mon" over the week's end.
Result<std::vector<unsigned>> days_from_text(std::string_view text, std::string_view line) {
  if (lower_case(text) == "daily") return std::vector<unsigned>{0, 1, 2, 3, 4, 5, 6};
  std::vector<unsigned> days;
  for (std::string_view piece : split(text, ',')) {
    const auto ends = split(piece, '-');
    std::vector<unsigned> found;
    for (std::string_view end : ends) {
      const auto day = day_named(end);
      if (!day || ends.size() > 2) {
        return Problem{{},
                       format("\"{}\", with \"{}\" where days belong", line, trimmed(end)),
                       std::string(shift_like),
                       did_you_mean(trimmed(end), day_names)};
      }
      found.push_back(*day);
    }
    for (unsigned day = found.front();; day = (day + 1) % 7) {
      days.push_back(day);
      if (day == found.back()) break;
    }
  }
  return days;
}

}  // namespace

Result<DailyHours> daily_hours_from_text(std::string_view written) {
  const std::string text = with_plain_dashes(written);
  const auto ends = split(text, '-');
  if (ends.size() == 2) {
    const auto from = parse_time_of_day(ends[0]), to = parse_time_of_day(ends[1]);
    if (from && to && *from < *to) return DailyHours{*from, *to};
    if (from && to) {
      return Problem{{},
                     format("\"{}\", which ends before it begins", trimmed(written)),
                     "an end after the beginning, at most 24:00",
                     "Write hours over midnight as two: \"mon 22:00-24:00\" and \"tue 00:00-06:00\"."};
    }
  }
  return Problem{{}, format("\"{}\"", trimmed(written)), "two times of day such as 07:00-15:30", ""};
}

Result<WeekHours> week_hours_from_text(std::span<const std::string> lines) {
  WeekHours week;
  for (const std::string& written : lines) {
    const std::string plain = with_plain_dashes(trimmed(written));
    const std::string line = lower_case(plain) == "always" ? "daily 00:00-24:00" : plain;
    const std::size_t blank = line.rfind(' ');
    if (blank == std::string::npos) {
      return Problem{{}, format("\"{}\"", written), std::string(shift_like), ""};
    }
    const auto hours = daily_hours_from_text(std::string_view(line).substr(blank + 1));
    if (!hours) {
      Problem problem = hours.problems().front();
      problem.found =
          format("\"{}\"{}", written,
                 problem.found.find("ends before") != std::string::npos ? ", which ends before it begins"
                                                                        : ", without two times of day");
      return problem;
    }
    const auto days = days_from_text(trimmed(std::string_view(line).substr(0, blank)), written);
    if (!days) return days.problems();
    for (unsigned day : *days) {
      for (const DailyHours& other : week.days[day]) {
        if (hours->from < other.to && other.from < hours->to) {
          return Problem{{},
                         format("\"{}\", which overlaps other hours of {}", written, day_names[day]),
                         "each hour of a day once",
                         ""};
        }
      }
      week.days[day].push_back(*hours);
    }
  }
  for (auto& [day, hours] : week.days) {
    std::sort(hours.begin(), hours.end(),
              [](const DailyHours& a, const DailyHours& b) { return a.from < b.from; });
  }
  return week;
}

}  // namespace dampward::files
