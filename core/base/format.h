#pragma once

#include <fmt/format.h>

#include <string>
#include <utility>

namespace dampward {

// fmt::format under the house's own name; the one place that includes the formatting library.
// An object, not a function, so that a call with std::string arguments never meets std::format of newer libraries.
struct Format {
  template <class... Args>
  std::string operator()(fmt::format_string<Args...> pattern, Args&&... args) const {
    return fmt::format(pattern, std::forward<Args>(args)...);
  }
};
inline constexpr Format format{};

// A number with so many digits after the point, and never "-0".
std::string fixed(double value, int digits);

}  // namespace dampward
