#include "core/base/format.h"

namespace dampward {

std::string fixed(double value, int digits) {
  std::string text = fmt::format("{:.{}f}", value, digits);
  const bool is_zero = text.find_first_of("123456789") == std::string::npos;
  if (is_zero && text.starts_with('-')) text.erase(0, 1);
  return text;
}

}  // namespace dampward
