#include "tests/files/json_schema.h"

#include <algorithm>
#include <cmath>
#include <set>

namespace {

using Json = nlohmann::json;

class Fitter {
 public:
  explicit Fitter(const Json& root) : root_(root) {}

  std::vector<std::string> all(const Json& document) {
    fit(root_, document, "");
    return misfits_;
  }

 private:
  void say(const std::string& path, const std::string& what) {
    misfits_.push_back((path.empty() ? "the document" : path) + ": " + what);
  }

  bool fits(const Json& schema, const Json& value) const {
    Fitter alone(root_);
    alone.fit(schema, value, "");
    return alone.misfits_.empty();
  }

  static bool is(const Json& value, const std::string& type) {
    if (type == "null") return value.is_null();
    if (type == "boolean") return value.is_boolean();
    if (type == "object") return value.is_object();
    if (type == "array") return value.is_array();
    if (type == "string") return value.is_string();
    if (type == "number") return value.is_number();
    // 6.1.1: an integer is any number without a fraction.
    return type == "integer" && value.is_number() && std::floor(value.get<double>()) == value.get<double>();
  }

  void fit(const Json& schema, const Json& value, const std::string& path) {
    if (schema.contains("$ref")) {  // what stands beside it counts for nothing
      const std::string ref = schema["$ref"];
      return fit(root_.at(Json::json_pointer(ref.substr(1))), value, path);
    }
    for (const auto& [word, rule] : schema.items()) keyword(schema, word, rule, value, path);
  }

  void keyword(const Json& schema, const std::string& word, const Json& rule, const Json& value,
               const std::string& path) {
    static const std::set<std::string> said_elsewhere{"$schema",     "title", "description",
                                                      "definitions", "else",  "additionalProperties"};
    if (said_elsewhere.contains(word)) return;
    if (word == "type") {
      const Json types = rule.is_array() ? rule : Json::array({rule});
      if (std::none_of(types.begin(), types.end(), [&](const Json& type) { return is(value, type); }))
        say(path, "not of type " + rule.dump());
    } else if (word == "const") {
      if (value != rule) say(path, "not " + rule.dump());
    } else if (word == "enum") {
      if (std::find(rule.begin(), rule.end(), value) == rule.end()) say(path, "none of " + rule.dump());
    } else if (word == "minimum") {
      if (value.is_number() && value < rule) say(path, "under " + rule.dump());
    } else if (word == "maximum") {
      if (value.is_number() && value > rule) say(path, "over " + rule.dump());
    } else if (word == "minLength") {
      if (value.is_string() && value.get<std::string>().size() < rule) say(path, "too short");
    } else if (word == "minItems") {
      if (value.is_array() && value.size() < rule) say(path, "too few");
    } else if (word == "maxItems") {
      if (value.is_array() && value.size() > rule) say(path, "too many");
    } else if (word == "required") {
      for (const Json& key : rule) {
        if (value.is_object() && !value.contains(key)) say(path, "without " + key.dump());
      }
    } else if (word == "properties") {
      properties(schema, value, path);
    } else if (word == "items") {
      for (std::size_t i = 0; value.is_array() && i < value.size(); ++i) {
        const std::string place = path + "[" + std::to_string(i) + "]";
        if (rule.is_object()) fit(rule, value[i], place);
        if (rule.is_array() && i < rule.size()) fit(rule[i], value[i], place);
      }
    } else if (word == "if") {
      if (!fits(rule, value) && schema.contains("else")) fit(schema["else"], value, path);
    } else {
      say(path, "the schema says \"" + word + "\", which this check does not know");
    }
  }

  void properties(const Json& schema, const Json& value, const std::string& path) {
    if (!value.is_object()) return;
    for (const auto& [key, inner] : value.items()) {
      const std::string place = path.empty() ? key : path + "." + key;
      if (schema["properties"].contains(key)) {
        fit(schema["properties"][key], inner, place);
      } else if (schema.value("additionalProperties", true) == false) {
        say(place, "not in the schema");
      }
    }
  }

  const Json& root_;
  std::vector<std::string> misfits_;
};

}  // namespace

std::vector<std::string> misfits(const Json& schema, const Json& document) {
  return Fitter(schema).all(document);
}
