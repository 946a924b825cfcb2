#include "adapters/files/detail/shop_document.h"

#include <algorithm>

#include "adapters/files/text_file.h"
#include "core/base/format.h"
#include "core/base/text.h"

namespace dampward::files::detail {
namespace {

namespace fs = std::filesystem;

const std::vector<std::string> table_names = {"site",      "ovens",       "spray",    "guns",     "crew",
                                              "stations",  "instruments", "lacquers", "thinners", "cleaners",
                                              "materials", "kinds",       "costs",    "power"};

void check_table_names(const TomlNode& document, Proof& proof) {
  for (const TomlNode& item : document.items) {
    if (std::find(table_names.begin(), table_names.end(), item.key) == table_names.end()) {
      proof.faults.push_back({item.key_place, format("the unknown table or key \"{}\"", item.key),
                              "one of the tables " + listed(table_names),
                              did_you_mean(item.key, table_names)});
    }
  }
}

}  // namespace

const std::vector<std::string>& shop_table_names() {
  return table_names;
}

bool table_stands_once(std::string_view name) {
  return name == "site" || name == "spray" || name == "costs" || name == "power";
}

const TomlNode* ShopDocument::single(std::string_view name, Proof& proof) const {
  const TomlNode* first = nullptr;
  for (const TomlNode& document : documents) {
    const TomlNode* found = document.find(name);
    if (found == nullptr) continue;
    if (found->type != TomlNode::Type::table) {
      proof.faults.push_back(
          {found->place, format("{} = {}", name, described(*found)), format("a table [{}]", name), ""});
    } else if (first != nullptr) {
      proof.faults.push_back({found->place, format("a second table [{}]", name),
                              format("one, which stands in {} line {}", first->place.file, first->place.line),
                              "Remove one of them."});
    } else {
      first = found;
    }
  }
  return first;
}

std::vector<const TomlNode*> ShopDocument::entries(std::string_view name, Proof& proof) const {
  std::vector<const TomlNode*> all;
  for (const TomlNode& document : documents) {
    const TomlNode* table = document.find(name);
    if (table == nullptr) continue;
    if (table->type != TomlNode::Type::table) {
      proof.faults.push_back({table->place, format("{} = {}", name, described(*table)),
                              format("tables such as [{}.first]", name), ""});
      continue;
    }
    for (const TomlNode& entry : table->items) {
      const auto same = std::find_if(all.begin(), all.end(),
                                     [&](const TomlNode* other) { return other->key == entry.key; });
      if (entry.type != TomlNode::Type::table) {
        proof.faults.push_back({entry.key_place, format("{} = {} in [{}]", entry.key, described(entry), name),
                                format("a name of its own for each: [{}.first]", name), ""});
      } else if (same != all.end()) {
        proof.faults.push_back({entry.key_place, format("a second [{}.{}]", name, entry.key),
                                format("each name once; the first stands in {} line {}",
                                       (*same)->key_place.file, (*same)->key_place.line),
                                "Give one of them another name."});
      } else {
        all.push_back(&entry);
      }
    }
  }
  return all;
}

ShopDocument read_shop_document(const fs::path& folder, Proof& proof) {
  ShopDocument all;
  std::error_code error;
  if (!fs::is_directory(folder, error)) {
    proof.faults.push_back({{folder.string()},
                            fs::exists(folder, error) ? "a file" : "no such folder",
                            "a shop folder",
                            "Make one with: dampward start " + folder.string()});
    return all;
  }
  std::vector<std::string> names;
  for (const fs::directory_entry& entry : fs::directory_iterator(folder, error)) {
    const std::string name = entry.path().filename().string();
    if (entry.path().extension() == ".toml" && !name.starts_with('.')) names.push_back(name);
  }
  if (error) {
    proof.faults.push_back({{folder.string()}, "a folder that cannot be read", "a readable shop folder", ""});
    return all;
  }
  if (names.empty()) {
    proof.faults.push_back({{folder.string()},
                            "no file that ends in .toml",
                            "site.toml, ovens.toml and so on",
                            "Make a shop folder with: dampward start NEW_FOLDER"});
    return all;
  }
  std::sort(names.begin(), names.end());
  for (const std::string& name : names) {
    const auto text = read_text(folder / name, name);
    if (!text) {
      proof.faults.insert(proof.faults.end(), text.problems().begin(), text.problems().end());
      all.complete = false;
      continue;
    }
    auto document = read_toml(name, *text);
    if (!document) {
      proof.faults.insert(proof.faults.end(), document.problems().begin(), document.problems().end());
      all.complete = false;
      continue;
    }
    check_table_names(*document, proof);
    all.documents.push_back(std::move(document).value());
  }
  return all;
}

}  // namespace dampward::files::detail
