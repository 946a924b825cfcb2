#include "apps/cli/detail/shell_text.h"

namespace dampward::cli {

std::string joined(const std::vector<std::string>& words, const std::string& between) {
  std::string all;
  for (const std::string& word : words) all += (all.empty() ? "" : between) + word;
  return all;
}

std::string put_before(const std::string& signs, const std::string& text, const std::string& escape) {
  std::string out;
  for (char c : text) out += (signs.find(c) != std::string::npos ? escape : "") + c;
  return out;
}

std::string quoted(const std::string& text) {
  std::string out = "'";
  for (char c : text) out += c == '\'' ? "'\\''" : std::string(1, c);
  return out + "'";
}

}  // namespace dampward::cli
