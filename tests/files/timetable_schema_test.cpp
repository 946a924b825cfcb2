// The schemas of timetable problems and answers say what their page says.
#include <doctest/doctest.h>

#include <regex>
#include <set>
#include <sstream>

#include "adapters/files/text_file.h"
#include "tests/files/json_schema.h"

namespace {

using Json = nlohmann::json;
using Keys = std::set<std::string>;

std::string text_of(const std::string& name) {
  return dampward::files::read_text(DAMPWARD_SOURCE_DIR "/docs/formats/" + name, name).value();
}

Json schema_of(const std::string& of) {
  return Json::parse(text_of("timetable-" + of + ".schema.json"));
}

// The keys in the tables below a heading of the page, each with its path: "loads[].members[].needs_min". Written shorter
// there: a list of things, and a key beside another of the same object (".end_min").
Keys keys_of_the_page(const std::string& heading) {
  Keys keys;
  std::istringstream page(text_of("timetable.md"));
  bool inside = false;
  for (std::string line; std::getline(page, line);) {
    if (line.starts_with("## ")) inside = line == "## " + heading;
    if (!inside || !line.starts_with("| `")) continue;
    const std::string cell = line.substr(0, line.find(" | "));
    std::string last;
    const std::regex quoted("`([^`]+)`");
    for (std::sregex_iterator it(cell.begin(), cell.end(), quoted), end; it != end; ++it) {
      std::string key = (*it)[1];
      if (key.starts_with(".")) key = last.substr(0, last.rfind('.')) + key;
      last = key;
      keys.insert(key);
    }
  }
  return keys;
}

// The same of a schema.
void gather(const Json& root, const Json& schema, const std::string& path, Keys& keys) {
  if (schema.contains("$ref")) {
    const std::string ref = schema["$ref"];
    return gather(root, root.at(Json::json_pointer(ref.substr(1))), path, keys);
  }
  if (schema.contains("items") && schema["items"].is_object())
    gather(root, schema["items"], path + "[]", keys);
  if (!schema.contains("properties")) return;
  for (const auto& [key, inner] : schema["properties"].items()) {
    const std::string place = path.empty() ? key : path + "." + key;
    keys.insert(place);
    gather(root, inner, place, keys);
  }
}

// "ovens" for "ovens[]": whether a list's items are objects, texts or spans is for the next keys to say.
Keys without_brackets(const Keys& keys) {
  Keys plain;
  for (std::string key : keys) {
    for (std::size_t at; (at = key.find("[]")) != std::string::npos;) key.erase(at, 2);
    plain.insert(key);
  }
  return plain;
}

// Keys that the page describes in the cell of the list they are in.
const Keys told_in_the_text = {"operations.demands.capacity",
                               "operations.demands.amount",
                               "operations.demands.tail_min",
                               "stations.id",
                               "stations.places",
                               "stations.serves",
                               "capacities.id",
                               "capacities.steps",
                               "oven_stays.load",
                               "oven_stays.oven",
                               "oven_stays.from_min",
                               "oven_stays.to_min",
                               "late.unit",
                               "late.due_min",
                               "late.finish_min",
                               "unplaced.unit",
                               "unplaced.operation",
                               "unplaced.obstacle",
                               "unplaced.by",
                               "unplaced.reason"};

void same_keys(const std::string& heading, const std::string& of) {
  const Json schema = schema_of(of);
  Keys in_schema, on_page = without_brackets(keys_of_the_page(heading));
  gather(schema, schema, "", in_schema);
  in_schema = without_brackets(in_schema);
  const std::string page = text_of("timetable.md");
  for (const std::string& key : in_schema) {
    if (told_in_the_text.contains(key)) {
      CHECK_MESSAGE(page.find(key.substr(key.rfind('.') + 1)) != std::string::npos, key);
    } else {
      CHECK_MESSAGE(on_page.contains(key), key, " is in the schema and not on the page");
    }
  }
  for (const std::string& key : on_page) CHECK_MESSAGE(in_schema.contains(key), key, " is not in the schema");
}

// The smallest problem there is, and one with a unit in an oven.
Json smallest() {
  return {{"format", "dampward timetable problem"}, {"version", 1}, {"horizon_min", 60}};
}

Json one_bake() {
  Json problem = smallest();
  problem["units"] = {{{"id", "0042"}}};
  problem["operations"] = {
      {{"id", "0042/load"}, {"unit", "0042"}, {"length_min", 5}, {"skill", "oven"}},
      {{"id", "bake"}, {"length_min", 20}, {"attendance", "watched"}, {"skill", "oven"}},
      {{"id", "0042/unload"}, {"unit", "0042"}, {"length_min", 5}, {"skill", "oven"}},
      {{"id", "0042/rest"}, {"unit", "0042"}, {"length_min", 5}, {"attendance", "unattended"}}};
  problem["loads"] = {{{"id", "one"},
                       {"ovens", {"cabinet"}},
                       {"bake", "bake"},
                       {"members", {{{"loading", "0042/load"}, {"unloading", "0042/unload"}}}}}};
  problem["people"] = {{{"id", "Ada"}, {"skills", {"oven"}}, {"shifts", {{0, 60}}}}};
  problem["ovens"] = {{{"id", "cabinet"}, {"powered", {{0, 60}}}}};
  return problem;
}

std::string first_misfit(const Json& document, const std::string& of = "problem") {
  const auto all = misfits(schema_of(of), document);
  return all.empty() ? "" : all.front();
}

}  // namespace

TEST_CASE("the problem's schema and its page name the same keys") {
  same_keys("Problem", "problem");
}

TEST_CASE("the answer's schema and its page name the same keys") {
  same_keys("Answer", "answer");
}

TEST_CASE("the smallest timetable problem, and one with a bake, fit the schema") {
  CHECK(first_misfit(smallest()) == "");
  CHECK(first_misfit(one_bake()) == "");
}

TEST_CASE("a key nobody knows, a missing one, a wrong type and a value out of range do not fit the schema") {
  const auto with = [](const char* pointer, const Json& value) {
    Json problem = one_bake();
    problem[Json::json_pointer(pointer)] = value;
    return first_misfit(problem);
  };
  CHECK(with("/ovens/0/colour", "grey") == "ovens[0].colour: not in the schema");
  CHECK(with("/horizon_min", 0) == "horizon_min: under 1");
  CHECK(with("/operations/0/length_min", "5") == "operations[0].length_min: not of type \"integer\"");
  CHECK(with("/operations/0/length_min", 5.5) == "operations[0].length_min: not of type \"integer\"");
  CHECK(with("/operations/0/length_min", nullptr) == "operations[0].length_min: not of type \"integer\"");
  CHECK(with("/operations/1/attendance", "asleep").starts_with("operations[1].attendance: none of"));
  CHECK(with("/people/0/shifts/0", {0, 1, 2}) == "people[0].shifts[0]: too many");
  CHECK(with("/loads/0/members", Json::array()) == "loads[0].members: too few");
  CHECK(with("/loads/0/setting_c", 500) == "loads[0].setting_c: over 400");
  CHECK(with("/units/0/id", "") == "units[0].id: too short");
  CHECK(with("/version", 2) == "version: not 1");
  CHECK(with("/operations/1/skill", nullptr) == "operations[1].skill: not of type \"string\"");
  CHECK(with("/operations/3/skill", nullptr) == "");
  Json headless = one_bake();
  headless.erase("format");
  CHECK(first_misfit(headless) == "the document: without \"format\"");
}
