#include "adapters/files/what_if.h"

#include <algorithm>
#include <optional>

#include "core/base/format.h"
#include "core/base/text.h"

namespace dampward::files {
namespace {

constexpr const char* looks_right = "a path and a value such as ovens.locker.lamps.count=3";

// Where in a text a character stands that is in no quotes and, where asked, in no brackets; its end where there is none.
std::size_t find_outside(std::string_view text, char wanted, std::size_t from, bool in_brackets_too) {
  char quote = 0;
  int depth = 0;
  for (std::size_t i = from; i < text.size(); ++i) {
    const char c = text[i];
    if (quote != 0) {
      if (c == '\\' && quote == '"') ++i;
      if (c == quote) quote = 0;
      continue;
    }
    if (c == wanted && (depth == 0 || in_brackets_too)) return i;
    if (c == '"' || c == '\'') quote = c;
    if (c == '[' || c == '{') ++depth;
    if (c == ']' || c == '}') --depth;
  }
  return text.size();
}

Place place_of(std::string_view said) {
  return {"--what-if " + std::string(said)};
}

void put_at(TomlNode& node, const Place& place) {
  node.place = place;
  node.key_place = place;
  for (TomlNode& item : node.items) put_at(item, place);
}

// The value as TOML, or as a text that lost its quotes on the way.
std::optional<TomlNode> value_of(std::string_view written, const Place& place) {
  const std::string text(trimmed(written));
  const auto document = read_toml("", "value = " + text);
  std::optional<TomlNode> value;
  if (document.ok() && document->items.size() == 1) {
    value = document->items.front();
  } else if (text.find_first_of("\"'[]{}\n\r#") == std::string::npos) {
    value = TomlNode{};
    value->type = TomlNode::Type::text;
    value->text = text;
  }
  if (value) put_at(*value, place);
  return value;
}

Result<Change> change_from_text(std::string_view said) {
  const Place place = place_of(said);
  const std::size_t sign = find_outside(said, '=', 0, true);
  if (sign == said.size()) return Problem{place, "a change without =", looks_right, ""};
  Change change;
  for (const std::string_view key : split(said.substr(0, sign), '.')) {
    change.keys.emplace_back(trimmed(key));
    const std::string& name = change.keys.back();
    if (name.empty()) return Problem{place, "a path with a name missing", looks_right, ""};
    change.path += (change.path.empty() ? "" : ".") + name;
  }
  const std::string_view written = trimmed(said.substr(sign + 1));
  if (written.empty()) {
    return Problem{place, change.path + " without a value", "a value written as in the file",
                   "For none of a list write []."};
  }
  auto value = value_of(written, place);
  if (!value) {
    return Problem{place, format("{} = {}, which cannot be read", change.path, written),
                   "a value written as in the file: 3, true, \"90 m3/min\", [\"mon-fri 07:00-15:30\"]",
                   "Put the whole change into single quotes, so that the double ones survive."};
  }
  change.value = std::move(*value);
  change.value.key = change.keys.back();
  return change;
}

// Nothing, or why two changes cannot both be made.
std::optional<Problem> quarrel(const Change& first, const Change& second) {
  if (first.path == second.path) {
    return Problem{second.value.place, second.path + " a second time", "each value once",
                   "Remove one of them."};
  }
  const auto inside = [](const Change& outer, const Change& inner) {
    return inner.path.starts_with(outer.path + ".");
  };
  if (!inside(first, second) && !inside(second, first)) return std::nullopt;
  return Problem{second.value.place, format("{} beside {}", second.path, first.path),
                 "changes of which none lies inside another", "Put both into one value, or leave one out."};
}

}  // namespace

Result<std::vector<Change>> changes_from_text(std::span<const std::string> texts) {
  std::vector<Change> changes;
  Problems problems;
  for (const std::string& text : texts) {
    for (std::size_t from = 0; from <= text.size();) {
      const std::size_t end = find_outside(text, ';', from, false);
      const std::string_view said = trimmed(std::string_view(text).substr(from, end - from));
      from = end + 1;
      if (said.empty() && !trimmed(text).empty()) continue;  // a ; at the end
      auto change = change_from_text(said);
      if (!change) {
        problems.insert(problems.end(), change.problems().begin(), change.problems().end());
        continue;
      }
      for (const Change& other : changes) {
        if (const auto problem = quarrel(other, *change)) problems.push_back(*problem);
      }
      changes.push_back(std::move(change).value());
    }
  }
  if (!problems.empty()) return problems;
  return changes;
}

}  // namespace dampward::files
