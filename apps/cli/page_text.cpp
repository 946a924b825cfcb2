#include "apps/cli/page_text.h"

#include <algorithm>

#include "core/base/text.h"

namespace dampward::cli {
namespace {

bool starts_code_point(char c) {
  return (static_cast<unsigned char>(c) & 0xC0) != 0x80;
}

// The bytes of the first `count` code points.
std::size_t bytes_of(std::string_view text, std::size_t count) {
  std::size_t i = 0;
  for (; i < text.size(); ++i) {
    if (starts_code_point(text[i]) && count-- == 0) break;
  }
  return i;
}

bool is_number(std::string_view word) {
  return word.find_first_of("0123456789") != std::string_view::npos &&
         word.find_first_not_of("0123456789.,+-(~±<>=") == std::string_view::npos;
}

bool is_unit(std::string_view word) {
  static constexpr std::string_view units[] = {
      "°C", "°F", "K",   "%",   "h",  "hour", "hours", "min", "minutes", "s",      "L",     "gal",
      "mL", "kg", "g",   "lb",  "mm", "cm",   "m",     "in",  "ft",      "µm",     "um",    "mil",
      "m²", "m³", "ft²", "ft³", "W",  "kW",   "kWh",   "ppm", "cfm",     "m³/min", "L/min", "times"};
  word = word.substr(0, word.find_last_not_of(".,;:)!?") + 1);
  return std::find(std::begin(units), std::end(units), word) != std::end(units);
}

// The words of a text; where asked, a number and its unit are one.
std::vector<std::string> words_of(std::string_view text, bool units_stay) {
  std::vector<std::string> words;
  bool number = false;
  for (std::string_view word : split(text, ' ')) {
    if (word.empty()) continue;
    if (units_stay && number && is_unit(word)) {
      words.back() += " " + std::string(word);
    } else {
      words.emplace_back(word);
    }
    number = is_number(word);
  }
  return words;
}

}  // namespace

std::size_t columns(std::string_view text) {
  std::size_t count = 0;
  for (char c : text) count += starts_code_point(c) ? 1 : 0;
  return count;
}

std::string cut(std::string_view text, std::size_t width) {
  if (columns(text) <= width) return std::string(text);
  if (width == 0) return "";
  return std::string(text.substr(0, bytes_of(text, width - 1))) + "…";
}

std::string fitted(std::string_view text, std::size_t width) {
  std::string piece = cut(text, width);
  piece.append(width - columns(piece), ' ');
  return piece;
}

std::vector<std::string> wrapped(std::string_view text, std::size_t width, std::size_t indent) {
  const std::size_t first_indent = std::min(text.find_first_not_of(' '), text.size());
  std::vector<std::string> lines;
  std::string line(first_indent, ' ');
  // Pages of 80 columns stay as they are shown in the guide and kept in files.
  for (const std::string& word : words_of(text, width < 80)) {
    const bool starts_line = columns(line) == (lines.empty() ? first_indent : indent);
    if (!starts_line && columns(line) + 1 + columns(word) > width) {
      lines.push_back(line);
      line = std::string(indent, ' ') + word;
    } else {
      line += (starts_line ? "" : " ") + word;
    }
  }
  lines.push_back(line);
  return lines;
}

std::string as_page(const std::vector<std::string>& lines) {
  std::string page;
  for (const std::string& line : lines) page += line + "\n";
  return page;
}

}  // namespace dampward::cli
