#include "apps/cli/detail/summary_parts.h"

#include <algorithm>

#include "apps/cli/page_text.h"
#include "core/base/format.h"

namespace dampward::cli {
namespace {

// With how many entries there are where none of them is shown.
std::string title(const Part& part, std::size_t shown) {
  return shown == 0 ? format("{}  ({})", part.title, part.entries.size()) : part.title;
}

std::size_t height(const Part& part, std::size_t shown, std::size_t width) {
  if (part.entries.empty()) return 0;
  const std::string head = title(part, shown);
  std::size_t lines = columns(head) <= width ? 1 : wrapped(head, width, 2).size();
  if (shown == 0) return lines;
  lines += (shown < part.entries.size() ? 1 : 0);
  for (std::size_t i = 0; i < shown; ++i) lines += part.entries[i].size();
  return lines;
}

// How many entries of each part fit. Parts that lead the page matter most: the last one that can gives way, entry by entry,
// down to its least; when that is not enough, down to nothing. Whole parts never give way.
std::vector<std::size_t> shares(const std::vector<Part>& parts, std::size_t room, std::size_t width) {
  std::vector<std::size_t> shown;
  for (const Part& part : parts) shown.push_back(part.entries.size());
  const auto total = [&] {
    std::size_t lines = 0;
    for (std::size_t i = 0; i < parts.size(); ++i) lines += height(parts[i], shown[i], width);
    return lines;
  };
  for (bool keep_least : {true, false}) {
    for (std::size_t i = parts.size(); i-- > 0;) {
      const std::size_t least =
          keep_least ? std::min(parts[i].least, shown[i]) : std::min<std::size_t>(parts[i].last, shown[i]);
      while (!parts[i].whole && shown[i] > least && total() > room) --shown[i];
    }
  }
  return shown;
}

void put(std::vector<Line>& lines, const std::string& text, std::size_t width, Tone tone = Tone::plain) {
  if (columns(text) <= width) {
    lines.push_back({text, tone});
    return;
  }
  for (const std::string& line : wrapped(text, width, 2)) lines.push_back({line, tone});
}

void put_entry(std::vector<Line>& lines, const std::vector<std::string>& entry, bool stops) {
  for (const std::string& line : entry) lines.push_back({line});
  if (!stops) return;
  Line& first = lines[lines.size() - entry.size()];
  first.tone = Tone::stop;
  first.toned = std::min(first.text.find(':'), first.text.size());
}

}  // namespace

std::size_t page_lines(std::size_t width) {
  constexpr std::size_t lines = 40, full_width = 80;
  return width >= full_width ? lines : (lines * full_width + width - 1) / width;
}

std::vector<Line> plain(const std::vector<std::string>& lines) {
  std::vector<Line> all;
  for (const std::string& line : lines) all.push_back({line});
  return all;
}

std::vector<Line> page_of(const std::vector<std::string>& head, const std::vector<Part>& parts,
                          const std::string& last, std::size_t width) {
  std::vector<Line> lines = plain(head), foot;
  lines.front().tone = Tone::heading;
  put(foot, last, width);
  const std::vector<std::size_t> shown = shares(parts, page_lines(width) - lines.size() - foot.size(), width);
  for (std::size_t i = 0; i < parts.size(); ++i) {
    const Part& part = parts[i];
    if (part.entries.empty()) continue;
    put(lines, title(part, shown[i]), width, part.tone);
    if (shown[i] == 0) continue;
    for (std::size_t entry = 0; entry < shown[i]; ++entry)
      put_entry(lines, part.entries[entry], part.stops.contains(entry));
    if (shown[i] < part.entries.size())
      lines.push_back({format("   and {} more", part.entries.size() - shown[i])});
  }
  lines.insert(lines.end(), foot.begin(), foot.end());
  return lines;
}

}  // namespace dampward::cli
