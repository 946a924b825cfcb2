#include "workbench/detail/published_inputs.h"

#include <charconv>

#include "core/base/format.h"
#include "core/base/text.h"

namespace dampward::workbench {

PublishedInputs::PublishedInputs(std::string_view text) {
  for (std::string_view piece : split(text, ';')) {
    const auto equals = piece.find('=');
    if (equals == std::string_view::npos) {
      complaints_.push_back(format("\"{}\" is no name=value", piece));
      continue;
    }
    const std::string name(trimmed(piece.substr(0, equals)));
    if (!entries_.emplace(name, Entry{std::string(trimmed(piece.substr(equals + 1)))}).second) {
      complaints_.push_back(format("{} is given twice", name));
    }
  }
}

std::string PublishedInputs::word(std::string_view name) {
  const auto found = entries_.find(name);
  if (found == entries_.end()) {
    complaints_.push_back(format("{} is missing", name));
    return "";
  }
  found->second.asked = true;
  return found->second.text;
}

double PublishedInputs::number(std::string_view name) {
  const std::string text = word(name);
  double value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error == std::errc() && end == text.data() + text.size()) return value;
  if (!text.empty()) complaints_.push_back(format("{} is \"{}\", which is no number", name, text));
  return 1;  // something every formula bears; the row is refused for the complaint
}

std::vector<double> PublishedInputs::numbers(std::string_view stem) {
  std::vector<double> values;
  for (int n = 1; entries_.contains(format("{}_{}", stem, n)); ++n)
    values.push_back(number(format("{}_{}", stem, n)));
  if (values.empty()) complaints_.push_back(format("{}_1 is missing", stem));
  return values;
}

std::vector<std::string> PublishedInputs::complaints() const {
  std::vector<std::string> all = complaints_;
  for (const auto& [name, entry] : entries_) {
    if (!entry.asked) all.push_back(format("{} is not an input of this quantity", name));
  }
  return all;
}

}  // namespace dampward::workbench
