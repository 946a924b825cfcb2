#include <doctest/doctest.h>

#include <algorithm>
#include <map>
#include <regex>
#include <set>
#include <sstream>

#include "tests/cli/demo_shop.h"
#include "tests/cli/program.h"

// docs/joint.md says which input of a shop moves which output of its plan. Here each change is made in a copy of the demo shop,
// and exactly the outputs the page names are found moved.

namespace {

using Names = std::set<std::string>;

// Texts between backquotes, or between commas where there are none.
std::vector<std::string> listed_in(const std::string& cell, const std::regex& item) {
  std::vector<std::string> all;
  for (std::sregex_iterator match(cell.begin(), cell.end(), item), end; match != end; ++match)
    all.push_back((*match)[1]);
  return all;
}

std::vector<std::string> quoted_in(const std::string& cell) {
  return listed_in(cell, std::regex("`([^`]+)`"));
}
std::vector<std::string> named_in(const std::string& cell) {
  return listed_in(cell, std::regex("([a-z][a-z -]*[a-z])"));
}

// The rows of the page's table under a heading, cell by cell.
std::vector<std::vector<std::string>> rows_under(const std::string& heading) {
  std::vector<std::vector<std::string>> rows;
  std::istringstream page(whole_text(DAMPWARD_SOURCE_DIR "/docs/joint.md"));
  bool here = false;
  for (std::string line; std::getline(page, line);) {
    if (line.starts_with("## ")) here = line == "## " + heading;
    if (!here || !line.starts_with("| ") || line.starts_with("| output |") || line.starts_with("| input |"))
      continue;
    std::istringstream cells(line.substr(1, line.size() - 2));
    rows.emplace_back();
    for (std::string cell; std::getline(cells, cell, '|');) {
      rows.back().push_back(std::regex_replace(cell, std::regex("^ +| +$"), ""));
    }
  }
  return rows;
}

// The group of each key the page lists.
std::map<std::string, std::string> outputs() {
  std::map<std::string, std::string> groups;
  for (const auto& row : rows_under("Outputs")) {
    for (const std::string& key : quoted_in(row.at(1))) {
      INFO(key, " stands twice");
      CHECK(groups.emplace(key, row.at(0)).second);
    }
  }
  return groups;
}

struct Input {
  std::string name, change;
  Names moves;
};

std::vector<Input> inputs() {
  std::vector<Input> all;
  for (const auto& row : rows_under("Inputs")) {
    const auto moved = row.at(2) == "nothing" ? std::vector<std::string>{} : named_in(row.at(2));
    const auto change = quoted_in(row.at(1));
    REQUIRE(change.size() == 1);
    all.push_back({row.at(0), change.front(), Names(moved.begin(), moved.end())});
  }
  return all;
}

// "flash" of a step "r1.flash2": items of a list may go by such a word.
std::string word_of(const Json& item) {
  if (!item.is_object() || !item.contains("id") || !item.at("id").is_string()) return "";
  std::string word = item.at("id");
  word.erase(0, word.rfind('.') + 1);
  word.erase(word.find_last_not_of("0123456789") + 1);
  return word;
}

// What an item of a list is about, so that it is found again wherever it stands.
std::vector<std::string> subjects(const Json& item, std::size_t number) {
  if (!item.is_object()) return {std::to_string(number)};
  if (item.contains("units") && item.at("units").is_array())
    return item.at("units").get<std::vector<std::string>>();
  std::string about;
  for (const char* key : {"unit", "part", "item", "person", "place", "id"}) {
    if (item.contains(key) && item.at(key).is_string()) about += item.at(key).get<std::string>() + "/";
  }
  return {about.empty() ? std::to_string(number) : about};
}

// A plan's figures by output, each with what it is about.
class Figures {
 public:
  Figures(const Json& plan, const std::map<std::string, std::string>& groups) : groups_(groups) {
    for (const auto& [key, value] : plan.items()) {
      if (key != "what_if") walk(value, key, key, "");
    }
  }
  const std::map<std::string, Names>& by_output() const { return figures_; }
  const Names& homeless() const { return homeless_; }

 private:
  // `path` holds [] for "each of a list", `worded` the step's own word where it has one.
  void walk(const Json& json, const std::string& path, const std::string& worded, const std::string& about) {
    if (json.is_object()) {
      for (const auto& [key, value] : json.items()) walk(value, path + "." + key, worded + "." + key, about);
    } else if (json.is_array()) {
      for (std::size_t i = 0; i < json.size(); ++i) {
        for (const std::string& subject : subjects(json[i], i)) {
          walk(json[i], path + "[]", worded + "[" + word_of(json[i]) + "]", about + subject + " ");
        }
      }
      if (json.empty()) put(path, worded, about + "none");
    } else {
      put(path, worded, about + json.dump());
    }
  }

  // Into the group of the longest listed key that the path begins with; a worded one first.
  void put(const std::string& path, const std::string& worded, const std::string& figure) {
    std::string group;
    std::size_t best = 0;
    for (const auto& [key, name] : groups_) {
      for (const std::string& form : {path, worded}) {
        const bool begins = form == key || form.starts_with(key + ".") || form.starts_with(key + "[");
        const std::size_t weight = 2 * key.size() + (form == worded ? 1 : 0);
        if (begins && weight > best) {
          best = weight;
          group = name;
        }
      }
    }
    if (group.empty()) homeless_.insert(path);
    figures_[group].insert(path + " " + figure);
  }

  const std::map<std::string, std::string>& groups_;
  std::map<std::string, Names> figures_;
  Names homeless_;
};

Json plan_of(const DemoShop& shop, const std::string& change = "") {
  std::vector<std::string> arguments = {"plan", shop.folder(), "--json"};
  if (!change.empty()) arguments.insert(arguments.end(), {"--what-if", change});
  const Run run = dampward_run(arguments);
  INFO(change, "\n", run.err);
  REQUIRE((run.exit_code == 0 || run.exit_code == 3));
  return only_document(run);
}

std::string in_a_row(const Names& names) {
  std::string all;
  for (const std::string& name : names) all += (all.empty() ? "" : ", ") + name;
  return all;
}

// Some figures of an output that stand in one plan and not in the other.
std::string some_moved(const Names& before, const Names& after) {
  Names moved;
  std::set_symmetric_difference(before.begin(), before.end(), after.begin(), after.end(),
                                std::inserter(moved, moved.end()));
  std::string all;
  for (const std::string& figure : moved) {
    if (all.size() < 300) all += "\n    " + figure;
  }
  return all;
}

}  // namespace

TEST_CASE("every input of a shop moves exactly the outputs that the page on the joint names") {
  const auto groups = outputs();
  const DemoShop shop;
  const Figures as_is(plan_of(shop), groups);
  for (const Input& input : inputs()) {
    const Figures changed(plan_of(shop, input.change), groups);
    Names moved;
    std::string how;
    for (const auto& [key, group] : groups) {
      const auto figures = [&](const Figures& of) {
        const auto found = of.by_output().find(group);
        return found == of.by_output().end() ? Names{} : found->second;
      };
      if (group == "words" || moved.count(group) > 0 || figures(as_is) == figures(changed)) continue;
      moved.insert(group);
      if (input.moves.count(group) == 0)
        how += "\n  " + group + ":" + some_moved(figures(as_is), figures(changed));
    }
    INFO(input.name, " (", input.change, ")", how);
    CHECK(in_a_row(moved) == in_a_row(input.moves));
  }
}

TEST_CASE("every key of a plan belongs to one output of the page on the joint") {
  const auto groups = outputs();
  const DemoShop shop;
  CHECK(in_a_row(Figures(plan_of(shop), groups).homeless()) == "");
}

TEST_CASE("the page on the joint names only keys that the page of keys knows") {
  const std::string page = whole_text(DAMPWARD_SOURCE_DIR "/docs/cli.md");
  for (const auto& [key, group] : outputs()) {
    const std::string plain = std::regex_replace(key, std::regex("\\[[a-z_]+\\]"), "[]");
    INFO(group, ": ", key);
    bool known = false;
    for (const char* more : {"`", ".", "["}) known = known || says(page, "| `" + plain + more);
    CHECK(known);
  }
}

TEST_CASE("every output of the page on the joint is moved by some input") {
  Names known = {}, moved;
  for (const auto& [key, group] : outputs()) known.insert(group);
  known.erase("words");
  for (const Input& input : inputs()) moved.insert(input.moves.begin(), input.moves.end());
  CHECK(in_a_row(moved) == in_a_row(known));
}

TEST_CASE("a what-if plans what the folder with the change written into its file plans") {
  struct Row {
    const char *file, *old, *by, *change;
  };
  for (const Row& row :
       {Row{"ovens.toml", "count = 4", "count = 5", "ovens.locker.lamps=5"},
        Row{"spray.toml", "fan = \"45 m3/min\"", "fan = \"90 m3/min\"", "spray.fan=90 m3/min"},
        Row{"crew.toml", "shifts = [\"mon-fri 09:00-18:00\"]", "shifts = []", "crew.painter=ill"}}) {
    const DemoShop as_is, edited;
    edited.replace(row.file, row.old, row.by);
    Json asked = plan_of(as_is, row.change);
    asked.erase("what_if");
    INFO(row.change);
    CHECK(asked == plan_of(edited));
  }
}
