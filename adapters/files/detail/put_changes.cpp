#include "adapters/files/detail/put_changes.h"

#include <algorithm>
#include <charconv>
#include <optional>

#include "core/base/format.h"
#include "core/base/text.h"

namespace dampward::files::detail {
namespace {

using Type = TomlNode::Type;
using workbench::ChangedValue;

TomlNode* find_in(TomlNode& table, std::string_view key) {
  return const_cast<TomlNode*>(std::as_const(table).find(key));
}

std::vector<std::string> keys_of(const TomlNode& table) {
  std::vector<std::string> keys;
  for (const TomlNode& item : table.items) keys.push_back(item.key);
  return keys;
}

TomlNode empty_table(const std::string& key, const Place& place) {
  TomlNode table;
  table.key = key;
  table.place = table.key_place = place;
  return table;
}

// "ovens.cabinet" of ovens.cabinet.lamps.count, for two keys.
std::string path_of(const Change& change, std::size_t keys) {
  std::string path;
  for (std::size_t i = 0; i < keys; ++i) path += (i > 0 ? "." : "") + change.keys[i];
  return path;
}

Problem nowhere(const Change& change, std::size_t keys, const std::vector<std::string>& known) {
  const std::string& last = change.keys[keys - 1];
  return {change.value.place, path_of(change, keys) + ", which stands in no file",
          known.empty() ? "a path of the shop's files" : "one of " + listed(known),
          did_you_mean(last, known)};
}

// An item of a list by its number from 1.
TomlNode* item_of(TomlNode& list, const std::string& key) {
  std::size_t number = 0;
  const auto end = key.data() + key.size();
  const auto read = std::from_chars(key.data(), end, number);
  const bool is_number = read.ec == std::errc() && read.ptr == end;
  return is_number && number >= 1 && number <= list.items.size() ? &list.items[number - 1] : nullptr;
}

// The document that holds a table, and there the entry where the change names one; null where it stands nowhere.
TomlNode* table_in(ShopDocument& document, const std::string& table, const std::string& entry) {
  for (TomlNode& file : document.documents) {
    TomlNode* found = find_in(file, table);
    if (found == nullptr || found->type != Type::table) continue;
    if (entry.empty()) return found;
    if (TomlNode* named = find_in(*found, entry)) return named;
  }
  return nullptr;
}

std::vector<std::string> entries_of(const ShopDocument& document, const std::string& table) {
  std::vector<std::string> names;
  for (const TomlNode& file : document.documents) {
    const TomlNode* found = file.find(table);
    if (found == nullptr || found->type != Type::table) continue;
    for (const std::string& key : keys_of(*found)) names.push_back(key);
  }
  return names;
}

void add_entry(ShopDocument& document, const Change& change) {
  TomlNode* table = table_in(document, change.keys[0], "");
  if (table == nullptr) {
    document.documents.front().items.push_back(empty_table(change.keys[0], change.value.place));
    table = &document.documents.front().items.back();
  }
  table->items.push_back(change.value);
}

// A part that neither the files nor what the kind is like knows would be a new part nobody meant.
std::optional<Problem> unknown_part(const Change& change, const workbench::Workshop& as_is) {
  const bool inside_a_part =
      change.keys.size() >= 4 && change.keys[0] == "kinds" && change.keys[2] == "parts";
  if (!inside_a_part || (change.keys.size() == 4 && change.value.type == Type::table)) return std::nullopt;
  const equipment::Kind* kind = as_is.kinds.find(KindId(change.keys[1]));
  if (kind == nullptr) return std::nullopt;
  std::vector<std::string> known;
  for (const auto& part : kind->parts) known.push_back(part.id.text);
  if (std::find(known.begin(), known.end(), change.keys[3]) != known.end()) return std::nullopt;
  return nowhere(change, 4, known);
}

// What a short form stands for: the change with its path and value written out.
Change written_out(const Change& change, const TomlNode* old) {
  Change full = change;
  const bool whole_person = change.keys.size() == 2 && change.keys[0] == "crew";
  const std::string word = change.value.type == Type::text ? lower_case(change.value.text) : "";
  if (whole_person && (word == "ill" || word == "away")) {
    full.keys.emplace_back("shifts");
    full.value.type = Type::list;
    full.value.text.clear();
  } else if (change.value.type == Type::number && old != nullptr && old->find("count") != nullptr) {
    full.keys.emplace_back("count");
  } else {
    return full;
  }
  full.path = path_of(full, full.keys.size());
  full.value.key = full.keys.back();
  return full;
}

// Puts a value where it belongs below `entry`, the table that the first `above` keys name.
std::optional<ChangedValue> put(TomlNode& entry, const Change& said, std::size_t above, Proof& proof) {
  const TomlNode* old = &entry;
  for (std::size_t i = above; i < said.keys.size() && old != nullptr; ++i) old = old->find(said.keys[i]);
  if (old == nullptr && said.value.type == Type::number && said.keys.back() == "lamps") {
    proof.faults.push_back({said.value.place, "no lamps yet in " + path_of(said, said.keys.size() - 1),
                            "what they are: " + said.path +
                                "={ count = 3, each = \"100 W\", distance = \"900 mm\", beam = \"120 deg\" }",
                            ""});
    return std::nullopt;
  }
  const Change change = written_out(said, old);
  TomlNode* node = &entry;
  for (std::size_t i = above; i < change.keys.size(); ++i) {
    const std::string& key = change.keys[i];
    const bool last = i + 1 == change.keys.size();
    TomlNode* next = nullptr;
    if (node->type == Type::list) {
      next = item_of(*node, key);
      if (next == nullptr) {
        proof.faults.push_back({change.value.place, path_of(change, i + 1) + ", an item that is not there",
                                format("a number from 1 to {}", node->items.size()), ""});
        return std::nullopt;
      }
    } else if (node->type != Type::table) {
      proof.faults.push_back({change.value.place,
                              format("{} inside {} = {}, which holds a value and no keys", key,
                                     path_of(change, i), toml_text(*node)),
                              path_of(change, i) + "=…", ""});
      return std::nullopt;
    } else {
      next = find_in(*node, key);
    }
    if (last) {
      ChangedValue told{change.path, next == nullptr ? std::nullopt : std::optional(toml_text(*next)),
                        toml_text(change.value)};
      if (next == nullptr) {
        node->items.push_back(change.value);
      } else {
        *next = change.value;
      }
      return told;
    }
    if (next == nullptr) {
      node->items.push_back(empty_table(key, change.value.place));
      next = &node->items.back();
    }
    node = next;
  }
  return std::nullopt;
}

std::optional<ChangedValue> put_change(ShopDocument& document, const Change& change,
                                       const workbench::Workshop& as_is, Proof& proof) {
  const std::vector<std::string>& tables = shop_table_names();
  const std::string& table = change.keys[0];
  if (std::find(tables.begin(), tables.end(), table) == tables.end()) {
    proof.faults.push_back(nowhere(change, 1, tables));
    return std::nullopt;
  }
  if (change.keys.size() == 1) {
    proof.faults.push_back({change.value.place, "a whole table " + change.path,
                            "a key inside it, such as spray.fan or ovens.locker.lamps.count", ""});
    return std::nullopt;
  }
  if (const auto problem = unknown_part(change, as_is)) {
    proof.faults.push_back(*problem);
    return std::nullopt;
  }
  if (table_stands_once(table)) {
    TomlNode* only = table_in(document, table, "");
    if (only != nullptr) return put(*only, change, 1, proof);
    document.documents.front().items.push_back(empty_table(table, change.value.place));
    return put(document.documents.front().items.back(), change, 1, proof);
  }
  TomlNode* entry = table_in(document, table, change.keys[1]);
  if (entry != nullptr && change.keys.size() == 2 && written_out(change, entry).keys.size() == 2 &&
      change.value.type != Type::table) {
    proof.faults.push_back(
        {change.value.place, format("{} for all of [{}]", toml_text(change.value), change.path),
         format("one of its keys, {}: {}.{}=…", listed(keys_of(*entry)), change.path,
                entry->items.empty() ? "name" : entry->items.front().key),
         table == "crew" ? "Somebody who does not come in: " + change.path + "=ill." : ""});
    return std::nullopt;
  }
  if (entry != nullptr) {
    if (change.keys.size() > 2) return put(*entry, change, 2, proof);
    TomlNode* all = nullptr;
    for (TomlNode& file : document.documents) {
      TomlNode* found = find_in(file, table);
      if (found != nullptr && found->find(change.keys[1]) != nullptr) all = found;
    }
    return put(*all, change, 1, proof);
  }
  if (change.keys.size() == 2 && change.value.type == Type::table) {
    add_entry(document, change);
    return ChangedValue{change.path, std::nullopt, toml_text(change.value)};
  }
  proof.faults.push_back(nowhere(change, 2, entries_of(document, table)));
  return std::nullopt;
}

}  // namespace

std::vector<ChangedValue> put_changes(ShopDocument& document, std::span<const Change> changes,
                                      const workbench::Workshop& as_is, Proof& proof) {
  std::vector<ChangedValue> told;
  if (document.documents.empty()) return told;
  for (const Change& change : changes) {
    if (auto changed = put_change(document, change, as_is, proof)) told.push_back(std::move(*changed));
  }
  return told;
}

}  // namespace dampward::files::detail
