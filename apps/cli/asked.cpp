#include "apps/cli/asked.h"

#include <algorithm>
#include <charconv>

#include "core/base/format.h"
#include "core/base/text.h"

namespace dampward::cli {

std::optional<std::string> Asked::text(const std::string& option) const {
  const auto written = call_.asked.find(option);
  return written == call_.asked.end() ? std::nullopt : std::optional(written->second);
}

std::optional<int> Asked::whole(const std::string& option, int lowest, int highest) {
  const auto written = text(option);
  if (!written) return std::nullopt;
  int value = 0;
  const char* end = written->data() + written->size();
  const auto [stop, error] = std::from_chars(written->data(), end, value);
  if (error == std::errc() && stop == end && value >= lowest && value <= highest) return value;
  fault(option, "\"" + *written + "\"", format("a whole number from {} to {}", lowest, highest));
  return std::nullopt;
}

std::optional<std::string> Asked::known(const std::string& option, std::span<const std::string> words) {
  const auto written = text(option);
  if (!written || std::find(words.begin(), words.end(), *written) != words.end()) return written;
  fault(option, "\"" + *written + "\", which nobody knows", "one of " + listed(words),
        did_you_mean(*written, words));
  return std::nullopt;
}

void Asked::fault(const std::string& option, const std::string& found, const std::string& expected,
                  const std::string& next) {
  problems_.push_back({{"command line"}, "--" + option + ": " + found, expected, next});
}

void Asked::out_of_place(std::initializer_list<const char*> options, const std::string& belongs) {
  for (const std::string option : options) {
    if (has(option)) problems_.push_back({{"command line"}, "--" + option, "it only " + belongs, ""});
  }
}

void Asked::missing(const std::string& option, const std::string& expected) {
  problems_.push_back({{"command line"}, "no --" + option, expected, ""});
}

bool Asked::above_zero(const std::string& option, bool is_above) {
  if (!is_above) fault(option, "\"" + *text(option) + "\"", "something above zero");
  return is_above;
}

}  // namespace dampward::cli
