#include "apps/cli/solve_limits.h"

#include <charconv>
#include <limits>

namespace dampward::cli {
namespace {

// A number of the kind asked for that fills the option's text.
template <class T>
std::optional<T> number(Asked& asked, const std::string& option, T low, T high, const std::string& expected) {
  const auto written = asked.text(option);
  if (!written) return std::nullopt;
  T value{};
  const auto [end, error] = std::from_chars(written->data(), written->data() + written->size(), value);
  if (error == std::errc() && end == written->data() + written->size() && value >= low && value <= high)
    return value;
  asked.fault(option, "\"" + *written + "\"", expected);
  return std::nullopt;
}

}  // namespace

SolveLimits limits_of(Asked& asked) {
  SolveLimits limits;
  constexpr double longest = 1e6, shortest = 1e-3;
  if (const auto time = number<double>(asked, "time-limit", shortest, longest,
                                       "seconds from 0.001 to 1000000, such as 10 or 0.5")) {
    limits.time = std::chrono::duration<double>(*time);
    limits.work = std::numeric_limits<std::int64_t>::max();
  }
  if (const auto work = number<std::int64_t>(asked, "work-limit", 1, std::numeric_limits<std::int64_t>::max(),
                                             "a whole number of steps, 1 or more"))
    limits.work = *work;
  if (const auto seed = number<std::uint64_t>(asked, "seed", 0, std::numeric_limits<std::uint64_t>::max(),
                                              "a whole number, 0 or more"))
    limits.seed = *seed;
  if (const auto threads = asked.whole("threads", 1, 2)) limits.threads = *threads;
  return limits;
}

}  // namespace dampward::cli
