#include "adapters/referee_json/detail/tree.h"

#include <algorithm>
#include <charconv>
#include <iterator>
#include <limits>
#include <nlohmann/json.hpp>

#include "core/base/format.h"

namespace dampward::referee_json {
namespace {

using Json = nlohmann::json;

constexpr std::size_t deepest = 16;  // ours go seven deep
constexpr std::size_t longest = 100'000;

// Walks the text and counts its lines. The grammar looks one byte past a number, so the byte fetched last is not counted.
class CountingIterator {
 public:
  using iterator_category = std::input_iterator_tag;
  using value_type = char;
  using difference_type = std::ptrdiff_t;
  using pointer = const char*;
  using reference = const char&;

  CountingIterator(const char* begin, const char* at, int* line) : begin_(begin), at_(at), line_(line) {}
  reference operator*() const { return *at_; }
  CountingIterator& operator++() {
    if (at_ != begin_ && at_[-1] == '\n') ++*line_;
    ++at_;
    return *this;
  }
  CountingIterator operator++(int) {
    CountingIterator before = *this;
    ++*this;
    return before;
  }
  bool operator==(const CountingIterator& other) const { return at_ == other.at_; }
  bool operator!=(const CountingIterator& other) const { return at_ != other.at_; }

 private:
  const char* begin_;
  const char* at_;
  int* line_;
};

// Builds the tree from the grammar's events; says false to stop.
class Builder : public nlohmann::json_sax<Json> {
 public:
  Builder(std::string_view text, std::string shown) : text_(text), shown_(std::move(shown)) {}

  int line = 1;
  Value root;
  Problems problems;

  bool null() override { return put(Value::Kind::null) != nullptr; }
  bool boolean(bool truth) override {
    Value* value = put(Value::Kind::truth);
    if (value) value->truth = truth;
    return value;
  }
  bool number_integer(number_integer_t number) override {
    Value* value = put(Value::Kind::whole);
    if (value) value->whole = number;
    if (value) value->real = double(number);
    return value;
  }
  bool number_unsigned(number_unsigned_t number) override {
    if (number <= number_unsigned_t(std::numeric_limits<std::int64_t>::max()))
      return number_integer(number_integer_t(number));
    return number_float(double(number), "");
  }
  bool number_float(number_float_t number, const string_t&) override {
    Value* value = put(Value::Kind::real);
    if (value) value->real = number;
    return value;
  }
  bool string(string_t& text) override {
    Value* value = put(Value::Kind::text);
    if (value) value->text = std::move(text);
    return value;
  }
  bool binary(binary_t&) override { return false; }
  bool start_object(std::size_t) override { return open(Value::Kind::object); }
  bool start_array(std::size_t) override { return open(Value::Kind::list); }
  bool key(string_t& name) override {
    key_ = std::move(name);
    return true;
  }
  bool end_object() override { return close(); }
  bool end_array() override { return close(); }
  bool parse_error(std::size_t position, const std::string&,
                   const nlohmann::detail::exception& error) override {
    const std::string_view before = text_.substr(0, std::min(position > 0 ? position - 1 : 0, text_.size()));
    const std::size_t line_begin = before.rfind('\n') + 1;  // 0 where there is none
    const auto at_line = 1 + std::count(before.begin(), before.end(), '\n');
    std::string what = error.what();
    what = what.substr(what.find("] ") + 2);
    std::replace(what.begin(), what.end(), '\n', ' ');
    problems.push_back({{shown_, int(at_line), int(before.size() - line_begin + 1)},
                        text_.empty() ? "an empty file" : what,
                        "JSON (RFC 8259)",
                        ""});
    return false;
  }

 private:
  Value* put(Value::Kind kind) {
    Value* value = &root;
    if (!open_.empty() && open_.back()->is(Value::Kind::list)) {
      if (open_.back()->items.size() == longest) return stop("a list of more than 100,000 things");
      value = &open_.back()->items.emplace_back();
    } else if (!open_.empty()) {
      value = &open_.back()->members.emplace_back(key_, Value{}).second;
    }
    value->kind = kind;
    value->line = line;
    return value;
  }
  bool open(Value::Kind kind) {
    if (open_.size() == deepest) return stop("lists or objects more than 16 deep");
    Value* value = put(kind);
    if (value) open_.push_back(value);
    return value;
  }
  bool close() {
    open_.pop_back();
    return true;
  }
  Value* stop(const std::string& found) {
    problems.push_back({{shown_, line}, found, "a file as docs/formats/timetable.md describes it", ""});
    return nullptr;
  }

  std::string_view text_;
  std::string shown_;
  std::string key_;
  // Only the innermost grows, so the pointers to those around it stay good.
  std::vector<Value*> open_;
};

}  // namespace

Result<Value> parse(std::string_view text, const std::string& shown) {
  Builder builder(text, shown);
  const char *begin = text.data(), *end = begin + text.size();
  const bool done = Json::sax_parse(CountingIterator(begin, begin, &builder.line),
                                    CountingIterator(begin, end, &builder.line), &builder);
  if (!done || !builder.problems.empty()) return builder.problems;
  return std::move(builder.root);
}

int line_of(const Value& root, std::string_view path) {
  const Value* here = &root;
  while (!path.empty()) {
    if (path.front() == '.') path.remove_prefix(1);
    const Value* next = nullptr;
    if (path.front() == '[') {
      std::size_t number = 0;
      const auto end = path.find(']');
      std::from_chars(path.data() + 1, path.data() + end, number);
      if (number < here->items.size()) next = &here->items[number];
      path.remove_prefix(end + 1);
    } else {
      const std::string_view key = path.substr(0, path.find_first_of(".["));
      for (const auto& [name, value] : here->members) {
        if (name == key) next = &value;
      }
      path.remove_prefix(key.size());
    }
    if (!next) break;
    here = next;
  }
  return here->line;
}

std::string words(const Value& value) {
  switch (value.kind) {
    case Value::Kind::null:
      return "null";
    case Value::Kind::truth:
      return value.truth ? "true" : "false";
    case Value::Kind::whole:
      return format("{}", value.whole);
    case Value::Kind::real:
      return format("{}", value.real);
    case Value::Kind::text:
      return format("\"{}\"", value.text);
    case Value::Kind::list:
      return "a list";
    case Value::Kind::object:
      return "an object";
  }
  return "";
}

}  // namespace dampward::referee_json
