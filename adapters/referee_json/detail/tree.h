#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/base/result.h"

namespace dampward::referee_json {

// A JSON value as it is written: keys in their order, also one that stands twice, and the line it begins in.
struct Value {
  enum class Kind { null, truth, whole, real, text, list, object };
  Kind kind = Kind::null;
  int line = 0;
  bool truth = false;
  std::int64_t whole = 0;
  double real = 0;  // of a whole number too
  std::string text;
  std::vector<Value> items;                            // of a list
  std::vector<std::pair<std::string, Value>> members;  // of an object

  bool is(Kind other) const { return kind == other; }
  bool is_number() const { return is(Kind::whole) || is(Kind::real); }
};

// Faults: no JSON (RFC 8259), lists in lists deeper than any of ours, lists longer than 100,000.
Result<Value> parse(std::string_view text, const std::string& shown);

// The line of what stands at "loads[2].members[0].loading", or of the last thing on the way there that exists.
int line_of(const Value& root, std::string_view path);

// The value in a person's words: "hot", 12.5, a list, an object, null.
std::string words(const Value& value);

}  // namespace dampward::referee_json
