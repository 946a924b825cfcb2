#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"

namespace dampward::files {

// One value of a TOML document, with its children in the order a person wrote them.
struct TomlNode {
  enum class Type { text, number, truth, date, time, list, table };

  Type type = Type::table;
  std::string key;   // empty for the document itself and for items of a list
  Place place;       // of the value
  Place key_place;   // of its key
  std::string text;  // a text; a date or time in ISO form
  double number = 0;
  bool truth = false;
  std::vector<TomlNode> items;  // of a list, or the entries of a table

  // The entry of a table, or null.
  const TomlNode* find(std::string_view name) const;
};

// What stands there, as a person would call it: the text "71", the number 71, a list …
std::string described(const TomlNode& node);

// The value as a person would write it into a file: "71 °C" in quotes, [1, 2], { count = 4 }.
std::string toml_text(const TomlNode& node);

// A whole document. Faults carry line and column; only the first fault of the language itself is known.
Result<TomlNode> read_toml(const std::string& file, std::string_view text);

// `base` with what `over` says: tables are joined key by key, everything else is replaced; new keys come last.
TomlNode joined(const TomlNode& base, const TomlNode& over);

}  // namespace dampward::files
