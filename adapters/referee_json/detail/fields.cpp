#include "adapters/referee_json/detail/fields.h"

#include <algorithm>
#include <set>

#include "core/base/format.h"
#include "core/base/text.h"

namespace dampward::referee_json {
namespace {

std::string whole_words(Limits limits) {
  return format("a whole number from {} to {}", limits.least, limits.most);
}

}  // namespace

void Complaints::add(const Value& where, const std::string& path, const std::string& found,
                     const std::string& expected) {
  problems.push_back({{file, where.line}, path.empty() ? found : path + ": " + found, expected, ""});
}

Fields::Fields(Complaints& complaints, const Value& value, std::string path)
    : complaints_(&complaints), value_(&value), path_(std::move(path)) {
  if (!is_object()) {
    complaints.add(value, path_, words(value), "an object");
    return;
  }
  std::set<std::string_view> seen;
  for (const auto& [key, member] : value.members) {
    if (!seen.insert(key).second)
      complaints.add(member, path_of(key), "the key a second time", "each key once");
  }
}

std::string Fields::path_of(const std::string& key) const {
  return path_.empty() ? key : path_ + "." + key;
}
std::string Fields::path_of(const std::string& key, std::size_t i) const {
  return path_of(key) + format("[{}]", i);
}

const Value* Fields::take(const char* key, Need need) {
  if (std::count(known_.begin(), known_.end(), key) == 0) known_.emplace_back(key);
  for (const auto& [name, member] : value_->members) {
    if (name == key) return &member;
  }
  if (need == Need::must)
    complaints_->add(*value_, path_of(key), "nothing", "this key, which has no default");
  return nullptr;
}

void Fields::complain(const char* key, const std::string& found, const std::string& expected) {
  const auto member = std::find_if(value_->members.begin(), value_->members.end(),
                                   [&](const auto& each) { return each.first == key; });
  complaints_->add(member == value_->members.end() ? *value_ : member->second, path_of(key), found, expected);
}

std::optional<std::int64_t> Fields::number(const Value& value, const std::string& path, Limits limits) {
  if (value.is(Value::Kind::whole) && value.whole >= limits.least && value.whole <= limits.most)
    return value.whole;
  complaints_->add(value, path, words(value), whole_words(limits));
  return {};
}

std::int64_t Fields::whole(const char* key, Limits limits) {
  const Value* value = take(key, Need::must);
  return value ? number(*value, path_of(key), limits).value_or(limits.least) : limits.least;
}

std::int64_t Fields::whole(const char* key, Limits limits, std::int64_t otherwise) {
  const Value* value = take(key, Need::may);
  return value ? number(*value, path_of(key), limits).value_or(otherwise) : otherwise;
}

std::optional<std::int64_t> Fields::whole_or_none(const char* key, Limits limits) {
  const Value* value = take(key, Need::may);
  if (!value || value->is(Value::Kind::null)) return {};
  return number(*value, path_of(key), limits);
}

std::optional<double> Fields::real_or_none(const char* key, RealLimits limits) {
  const Value* value = take(key, Need::may);
  if (!value || value->is(Value::Kind::null)) return {};
  if (value->is_number() && value->real >= limits.least && value->real <= limits.most) return value->real;
  complaints_->add(*value, path_of(key), words(*value),
                   format("a number from {} to {}", limits.least, limits.most));
  return {};
}

double Fields::real(const char* key, RealLimits limits, double otherwise) {
  const auto is_key = [&](const auto& member) {
    return member.first == key && member.second.is(Value::Kind::null);
  };
  if (std::any_of(value_->members.begin(), value_->members.end(), is_key))
    complain(key, "null", format("a number from {} to {}", limits.least, limits.most));
  return real_or_none(key, limits).value_or(otherwise);
}

bool Fields::truth(const char* key, bool otherwise) {
  const Value* value = take(key, Need::may);
  if (!value) return otherwise;
  if (value->is(Value::Kind::truth)) return value->truth;
  complaints_->add(*value, path_of(key), words(*value), "true or false");
  return otherwise;
}

std::string Fields::text(const char* key) {
  const Value* value = take(key, Need::must);
  if (!value) return "";
  if (value->is(Value::Kind::text)) return value->text;
  complaints_->add(*value, path_of(key), words(*value), "a text");
  return "";
}

std::string Fields::text(const char* key, const std::string& otherwise) {
  const Value* value = take(key, Need::may);
  if (!value) return otherwise;
  if (value->is(Value::Kind::text)) return value->text;
  complaints_->add(*value, path_of(key), words(*value), "a text");
  return otherwise;
}

std::string Fields::id(const char* key) {
  const Value* value = take(key, Need::must);
  if (!value) return "";
  if (value->is(Value::Kind::text) && !value->text.empty()) return value->text;
  complaints_->add(*value, path_of(key), words(*value), "a text of at least one letter");
  return "";
}

std::optional<std::string> Fields::id_or_none(const char* key) {
  const Value* value = take(key, Need::may);
  if (!value || value->is(Value::Kind::null)) return {};
  if (value->is(Value::Kind::text) && !value->text.empty()) return value->text;
  complaints_->add(*value, path_of(key), words(*value), "a text of at least one letter, or null");
  return {};
}

std::optional<std::string> Fields::id_or_null(const char* key) {
  take(key, Need::must);
  return id_or_none(key);
}

std::string Fields::word(const char* key, const std::vector<std::string>& words_allowed, bool must) {
  const Value* value = take(key, must ? Need::must : Need::may);
  if (!value) return words_allowed.front();
  if (value->is(Value::Kind::text) && std::count(words_allowed.begin(), words_allowed.end(), value->text) > 0)
    return value->text;
  complaints_->add(*value, path_of(key), words(*value), "one of " + listed(words_allowed));
  return words_allowed.front();
}

void Fields::exactly(const char* key, const std::string& text) {
  const Value* value = take(key, Need::must);
  if (value && !(value->is(Value::Kind::text) && value->text == text))
    complaints_->add(*value, path_of(key), words(*value), "\"" + text + "\"");
}

void Fields::exactly(const char* key, std::int64_t number) {
  const Value* value = take(key, Need::must);
  if (value && !(value->is(Value::Kind::whole) && value->whole == number))
    complaints_->add(*value, path_of(key), words(*value), format("{}", number));
}

const Value* Fields::list(const char* key, Need need, std::size_t most) {
  const Value* value = take(key, need);
  if (!value) return nullptr;
  if (!value->is(Value::Kind::list)) {
    complaints_->add(*value, path_of(key), words(*value), "a list");
    return nullptr;
  }
  if (value->items.size() > most)
    complaints_->add(*value, path_of(key), format("a list of {}", value->items.size()),
                     format("at most {}", most));
  return value;
}

std::vector<std::string> Fields::ids(const char* key, Need need) {
  std::vector<std::string> ids;
  const Value* value = list(key, need, longest_list);
  for (std::size_t i = 0; value && i < value->items.size(); ++i) {
    const Value& item = value->items[i];
    if (item.is(Value::Kind::text) && !item.text.empty()) {
      ids.push_back(item.text);
    } else {
      complaints_->add(item, path_of(key, i), words(item), "a text of at least one letter");
    }
  }
  return ids;
}

std::vector<std::pair<std::int64_t, std::int64_t>> Fields::pairs(const char* key, Limits second) {
  std::vector<std::pair<std::int64_t, std::int64_t>> pairs;
  const Value* value = list(key, Need::may, longest_list);
  for (std::size_t i = 0; value && i < value->items.size(); ++i) {
    const Value& item = value->items[i];
    if (!item.is(Value::Kind::list) || item.items.size() != 2) {
      complaints_->add(item, path_of(key, i), words(item), "a list of two whole numbers");
      continue;
    }
    const auto a = number(item.items[0], path_of(key, i) + "[0]", any_minute);
    const auto b = number(item.items[1], path_of(key, i) + "[1]", second);
    if (a && b) pairs.emplace_back(*a, *b);
  }
  return pairs;
}

std::vector<referee::Span> Fields::spans(const char* key) {
  std::vector<referee::Span> spans;
  for (const auto& [from, to] : pairs(key, any_minute)) spans.push_back({from, to});
  return spans;
}

std::vector<referee::Step> Fields::steps(const char* key) {
  std::vector<referee::Step> steps;
  for (const auto& [from, amount] : pairs(key, {0, 1'000'000'000'000})) steps.push_back({from, amount});
  return steps;
}

void Fields::close() {
  for (const auto& [key, member] : value_->members) {
    if (std::count(known_.begin(), known_.end(), key) > 0) continue;
    const std::string guess = did_you_mean(key, known_);
    complaints_->problems.push_back({{complaints_->file, member.line},
                                     path_of(key) + ": a key nobody knows",
                                     "one of " + listed(known_),
                                     guess});
  }
}

}  // namespace dampward::referee_json
