#include "core/papers/words.h"

#include "core/base/promise.h"

namespace dampward::papers {

std::string Words::operator()(std::string_view key, std::initializer_list<std::string> values) const {
  const auto found = sentences_.find(key);
  DAMPWARD_PROMISE(found != sentences_.end(), "every sentence of a sheet is in the table of its language");
  std::string text = found->second;
  int number = 0;
  for (const std::string& value : values) {
    const std::string place = "{" + std::to_string(number++) + "}";
    for (std::size_t at = text.find(place); at != std::string::npos; at = text.find(place, at + value.size()))
      text.replace(at, place.size(), value);
  }
  return text;
}

Runs runs(std::string_view marked) {
  Runs all;
  int weight = 0;
  while (!marked.empty()) {
    const std::string_view tag = weight == 0 ? "<b>" : "</b>";
    const std::size_t end = marked.find(tag);
    const std::string_view piece = marked.substr(0, end);
    if (!piece.empty()) all.push_back({std::string(piece), weight, false});
    if (end == std::string_view::npos) break;
    marked.remove_prefix(end + tag.size());
    weight = weight == 0 ? 700 : 0;
  }
  return all;
}

Runs figure(const std::string& number, const std::string& unit) {
  if (unit.empty()) return {{number, 0, false}};
  return {{number, 0, false}, {thin_space + unit, 500, true}};
}

}  // namespace dampward::papers
