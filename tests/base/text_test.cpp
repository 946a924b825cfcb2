#include "core/base/text.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <string>
#include <vector>

using namespace dampward;

TEST_CASE("blanks of every kind are taken off both ends and left alone inside") {
  CHECK(trimmed("  spray room\t\r\n") == "spray room");
  CHECK(trimmed("\u00A0"
                "71\u202F°C\u202F") == "71\u202F°C");
  CHECK(trimmed(" \t ").empty());
}

TEST_CASE("a text without separator is one piece, and an empty one too") {
  CHECK(split("a,b,,c", ',') == std::vector<std::string_view>{"a", "b", "", "c"});
  CHECK(split("abc", ',').size() == 1);
  CHECK(split("", ',') == std::vector<std::string_view>{""});
}

TEST_CASE("a list is spoken with commas and one and") {
  CHECK(listed(std::vector<std::string>{}) == "");
  CHECK(listed(std::vector<std::string>{"oven"}) == "oven");
  CHECK(listed(std::vector<std::string>{"test", "strip", "clean"}) == "test, strip and clean");
}

// "kitten" and "sitting", the usual example of Levenshtein's distance: three changes.
TEST_CASE("the edit distance counts insertions, deletions and replacements") {
  CHECK(edit_distance("kitten", "sitting") == 3);
  CHECK(edit_distance("", "oven") == 4);
  CHECK(edit_distance("oven", "oven") == 0);
}

TEST_CASE("a misspelt word finds the one that was meant, a foreign one finds none") {
  const std::vector<std::string> keys = {"heater", "evenness", "vent", "supply"};
  CHECK(did_you_mean("heeter", keys) == "Did you mean \"heater\"?");
  CHECK(did_you_mean("EVENESS", keys) == "Did you mean \"evenness\"?");
  CHECK(did_you_mean("bananas", keys).empty());
  CHECK(did_you_mean("", keys).empty());
  CHECK(nearest("", std::vector<std::string>{"a"}).empty());
}

TEST_CASE("property: the edit distance is symmetric, zero only for equal texts, and keeps the triangle") {
  CHECK(rc::check([](const std::string& a, const std::string& b, const std::string& c) {
    RC_ASSERT(edit_distance(a, b) == edit_distance(b, a));
    RC_ASSERT((edit_distance(a, b) == 0) == (a == b));
    RC_ASSERT(edit_distance(a, c) <= edit_distance(a, b) + edit_distance(b, c));
  }));
}

TEST_CASE("property: pieces joined by their separator give the text back") {
  CHECK(rc::check([](const std::string& text) {
    std::string joined;
    bool first = true;
    for (std::string_view piece : split(text, ';')) {
      if (!first) joined += ';';
      joined += piece;
      first = false;
    }
    RC_ASSERT(joined == text);
  }));
}
