#include "adapters/files/detail/number_lines.h"

#include <charconv>

#include "core/base/format.h"

namespace dampward::files::detail {
namespace {

constexpr std::string_view blanks = " \t\r";

}  // namespace

std::optional<NumberLine> NumberLines::next() {
  while (!rest_.empty()) {
    const std::size_t end = rest_.find('\n');
    NumberLine line{++number_, rest_.substr(0, end), {}};
    rest_.remove_prefix(end == std::string_view::npos ? rest_.size() : end + 1);
    std::string_view left = line.text;
    for (std::size_t from; (from = left.find_first_not_of(blanks)) != std::string_view::npos;) {
      left.remove_prefix(from);
      line.fields.push_back(left.substr(0, left.find_first_of(blanks)));
      left.remove_prefix(line.fields.back().size());
    }
    if (!line.fields.empty()) return line;
  }
  return std::nullopt;
}

std::optional<int> whole(std::string_view field) {
  int value = 0;
  const auto [end, error] = std::from_chars(field.data(), field.data() + field.size(), value);
  if (error != std::errc() || end != field.data() + field.size()) return std::nullopt;
  return value;
}

std::optional<int> bracketed(std::string_view field) {
  if (field.size() < 3 || field.front() != '[' || field.back() != ']') return std::nullopt;
  return whole(field.substr(1, field.size() - 2));
}

bool ReadFault::at(int line, std::string found, std::string expected, std::string next) {
  if (!problem) problem = Problem{{file, line}, std::move(found), std::move(expected), std::move(next)};
  return false;
}

bool ReadFault::cut_short(int last_line, std::string expected) {
  return at(last_line, "the end of the file", std::move(expected),
            "The file was cut short, or its first lines count more than it holds: fetch it anew.");
}

}  // namespace dampward::files::detail
