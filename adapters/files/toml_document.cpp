#include "adapters/files/toml_document.h"

#include <toml++/toml.h>

#include <algorithm>
#include <sstream>
#include <utility>

#include "core/base/format.h"

namespace dampward::files {
namespace {

Place place_of(const std::string& file, const toml::source_region& region) {
  return {file, static_cast<int>(region.begin.line), static_cast<int>(region.begin.column)};
}

template <class T>
std::string iso(const T& value) {
  std::ostringstream text;
  text << value;
  return text.str();
}

TomlNode node_of(const toml::node& value, const std::string& file) {
  TomlNode node;
  node.place = place_of(file, value.source());
  if (const auto* text = value.as_string()) {
    node.type = TomlNode::Type::text;
    node.text = text->get();
  } else if (const auto* whole = value.as_integer()) {
    node.type = TomlNode::Type::number;
    node.number = static_cast<double>(whole->get());
  } else if (const auto* real = value.as_floating_point()) {
    node.type = TomlNode::Type::number;
    node.number = real->get();
  } else if (const auto* truth = value.as_boolean()) {
    node.type = TomlNode::Type::truth;
    node.truth = truth->get();
  } else if (const auto* date = value.as_date()) {
    node.type = TomlNode::Type::date;
    node.text = iso(date->get());
  } else if (const auto* time = value.as_time()) {
    node.type = TomlNode::Type::time;
    node.text = iso(time->get());
  } else if (const auto* moment = value.as_date_time()) {
    node.type = TomlNode::Type::time;
    node.text = iso(moment->get());
  } else if (const auto* list = value.as_array()) {
    node.type = TomlNode::Type::list;
    for (const toml::node& item : *list) node.items.push_back(node_of(item, file));
  } else if (const auto* table = value.as_table()) {
    node.type = TomlNode::Type::table;
    for (const auto& [key, entry] : *table) {
      TomlNode child = node_of(entry, file);
      child.key = std::string(key.str());
      child.key_place = place_of(file, key.source());
      node.items.push_back(std::move(child));
    }
    // The library keeps keys in alphabetical order; a person's order carries meaning (parts, for one).
    std::stable_sort(node.items.begin(), node.items.end(), [](const TomlNode& a, const TomlNode& b) {
      return std::pair(a.key_place.line, a.key_place.column) <
             std::pair(b.key_place.line, b.key_place.column);
    });
  }
  return node;
}

}  // namespace

const TomlNode* TomlNode::find(std::string_view name) const {
  if (type != Type::table) return nullptr;
  const auto found =
      std::find_if(items.begin(), items.end(), [&](const TomlNode& item) { return item.key == name; });
  return found == items.end() ? nullptr : &*found;
}

std::string described(const TomlNode& node) {
  switch (node.type) {
    case TomlNode::Type::text:
      return "\"" + node.text + "\"";
    case TomlNode::Type::number:
      return format("{}", node.number);
    case TomlNode::Type::truth:
      return node.truth ? "true" : "false";
    case TomlNode::Type::date:
    case TomlNode::Type::time:
      return node.text;
    case TomlNode::Type::list:
      return "a list";
    case TomlNode::Type::table:
      return "a table";
  }
  return "";
}

std::string toml_text(const TomlNode& node) {
  if (node.type != TomlNode::Type::list && node.type != TomlNode::Type::table) return described(node);
  const bool is_table = node.type == TomlNode::Type::table;
  std::string text;
  for (const TomlNode& item : node.items) {
    text += (text.empty() ? "" : ", ") + (is_table ? item.key + " = " : std::string()) + toml_text(item);
  }
  if (!is_table) return "[" + text + "]";
  return text.empty() ? "{}" : "{ " + text + " }";
}

Result<TomlNode> read_toml(const std::string& file, std::string_view text) {
  try {
    return node_of(toml::parse(text, file), file);
  } catch (const toml::parse_error& error) {
    return Problem{place_of(file, error.source()),
                   format("text that cannot be read ({})", std::string(error.description())),
                   "lines such as name = \"spray room\", each key once",
                   "Texts and figures with a unit stand in quotes: mass = \"8.5 kg\"."};
  }
}

TomlNode joined(const TomlNode& base, const TomlNode& over) {
  if (base.type != TomlNode::Type::table || over.type != TomlNode::Type::table) return over;
  TomlNode both = base;
  both.key = over.key;
  both.place = over.place;
  both.key_place = over.key_place;
  for (const TomlNode& item : over.items) {
    const auto old = std::find_if(both.items.begin(), both.items.end(),
                                  [&](const TomlNode& candidate) { return candidate.key == item.key; });
    if (old == both.items.end()) {
      both.items.push_back(item);
    } else {
      *old = joined(*old, item);
    }
  }
  return both;
}

}  // namespace dampward::files
