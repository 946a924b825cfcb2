#include "adapters/files/weather_lines.h"

#include <algorithm>
#include <charconv>

#include "core/base/format.h"
#include "core/base/text.h"

namespace dampward::files {

WeatherLines::WeatherLines(std::string_view text)
    : rest_(text), end_(text.find('\n') == std::string_view::npos ? '\r' : '\n') {}

std::optional<WeatherLine> WeatherLines::next() {
  while (!rest_.empty()) {
    const std::size_t end = std::min(rest_.find(end_), rest_.size());
    std::string_view line = rest_.substr(0, end);
    rest_.remove_prefix(std::min(end + 1, rest_.size()));
    ++number_;
    if (line.ends_with('\r')) line.remove_suffix(1);
    if (line.find_first_not_of(" \t") != std::string_view::npos) return WeatherLine{line, number_};
  }
  return std::nullopt;
}

std::vector<std::string> head_fields(std::string_view line) {
  std::vector<std::string> fields(1);
  bool quoted = false;
  for (const char c : line) {
    if (c == '"') {
      quoted = !quoted;
    } else if (c == ',' && !quoted) {
      fields.emplace_back();
    } else {
      fields.back() += c;
    }
  }
  for (std::string& field : fields) field = std::string(trimmed(field));
  return fields;
}

std::size_t pick_fields(std::string_view line, std::span<const std::size_t> wanted,
                        std::span<std::string_view> out) {
  const char* begin = line.data();
  const char* const end = begin + line.size();
  std::size_t field = 0, found = 0;
  for (const char* at = begin; found < wanted.size(); ++at) {
    if (at != end && *at != ',') continue;
    if (field == wanted[found]) out[found++] = {begin, static_cast<std::size_t>(at - begin)};
    if (at == end) {
      for (; found < wanted.size(); ++found) out[found] = {end, 0};
      return field + 1;
    }
    begin = at + 1;
    ++field;
  }
  return field + 1 + static_cast<std::size_t>(std::count(begin, end, ','));
}

std::optional<double> to_number(std::string_view field) {
  const char* begin = field.data();
  const char* end = begin + field.size();
  while (begin != end && (*begin == ' ' || *begin == '\t')) ++begin;
  while (begin != end && (end[-1] == ' ' || end[-1] == '\t')) --end;
  if (begin != end && *begin == '+') ++begin;
  double value = 0;
  const auto [stopped, error] = std::from_chars(begin, end, value);
  if (error != std::errc() || stopped != end) return std::nullopt;
  return value;
}

void WeatherFaults::add(int line, int column, std::string found, std::string expected, std::string next) {
  if (problems_.size() == most) {
    ++untold_;
    return;
  }
  problems_.push_back({{file_, line, column}, std::move(found), std::move(expected), std::move(next)});
}

Problems WeatherFaults::take() {
  if (untold_ > 0) {
    problems_.push_back({{file_},
                         format("and {} more faults", untold_),
                         "a file without faults",
                         "Mend the first ones, or fetch the file anew."});
  }
  return std::move(problems_);
}

}  // namespace dampward::files
