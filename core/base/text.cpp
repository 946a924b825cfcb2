#include "core/base/text.h"

#include <algorithm>
#include <numeric>

namespace dampward {
namespace {

constexpr std::string_view blanks[] = {" ", "\t", "\r", "\n", "\u00A0", "\u202F"};

}  // namespace

std::string_view trimmed(std::string_view text) {
  for (bool more = true; more;) {
    more = false;
    for (std::string_view blank : blanks) {
      if (text.starts_with(blank)) {
        text.remove_prefix(blank.size());
        more = true;
      }
      if (text.ends_with(blank)) {
        text.remove_suffix(blank.size());
        more = true;
      }
    }
  }
  return text;
}

std::vector<std::string_view> split(std::string_view text, char separator) {
  std::vector<std::string_view> pieces;
  for (;;) {
    const std::size_t end = text.find(separator);
    pieces.push_back(text.substr(0, end));
    if (end == std::string_view::npos) return pieces;
    text.remove_prefix(end + 1);
  }
}

std::string lower_case(std::string_view text) {
  std::string small(text);
  for (char& c : small) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  }
  return small;
}

std::string listed(std::span<const std::string> items) {
  std::string text;
  for (std::size_t i = 0; i < items.size(); ++i) {
    if (i > 0) text += i + 1 == items.size() ? " and " : ", ";
    text += items[i];
  }
  return text;
}

std::size_t edit_distance(std::string_view a, std::string_view b) {
  std::vector<std::size_t> before, above(b.size() + 1), row(b.size() + 1);
  std::iota(above.begin(), above.end(), std::size_t{0});
  for (std::size_t i = 1; i <= a.size(); ++i) {
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      row[j] = std::min({row[j - 1] + 1, above[j] + 1, above[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1)});
      const bool swapped = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
      if (swapped) row[j] = std::min(row[j], before[j - 2] + 1);
    }
    before = above;
    above = row;
  }
  return above[b.size()];
}

std::string nearest(std::string_view word, std::span<const std::string> known) {
  if (word.empty()) return "";
  std::string best;
  std::size_t best_distance = std::max<std::size_t>(1, word.size() / 3) + 1;
  for (const std::string& candidate : known) {
    const std::size_t distance = edit_distance(lower_case(word), lower_case(candidate));
    if (distance < best_distance) {
      best = candidate;
      best_distance = distance;
    }
  }
  return best;
}

std::string did_you_mean(std::string_view word, std::span<const std::string> known) {
  const std::string guess = nearest(word, known);
  return guess.empty() ? "" : "Did you mean \"" + guess + "\"?";
}

}  // namespace dampward
