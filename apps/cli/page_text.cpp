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
  for (std::string_view word : split(text, ' ')) {
    if (word.empty()) continue;
    const bool starts_line = columns(line) == (lines.empty() ? first_indent : indent);
    if (!starts_line && columns(line) + 1 + columns(word) > width) {
      lines.push_back(line);
      line = std::string(indent, ' ') + std::string(word);
    } else {
      line += (starts_line ? "" : " ") + std::string(word);
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
