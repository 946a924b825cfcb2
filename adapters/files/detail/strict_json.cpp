#include "adapters/files/detail/strict_json.h"

#include <algorithm>
#include <cmath>

#include "core/base/format.h"
#include "core/base/text.h"

namespace dampward::files::detail {
namespace {

constexpr WholeRange any_minute{-3650 * 24 * 60, 3650 * 24 * 60};

std::string shown(const Json& value) {
  std::string text = value.dump(-1, ' ', false, Json::error_handler_t::replace);
  return text.size() > 60 ? text.substr(0, 57) + "..." : text;
}

Place place_of(std::string_view text, std::size_t byte, const std::string& file) {
  const std::string_view before = text.substr(0, std::min(byte > 0 ? byte - 1 : 0, text.size()));
  const auto line = std::count(before.begin(), before.end(), '\n');
  const std::size_t last = before.rfind('\n');
  const std::size_t column = before.size() - (last == std::string_view::npos ? 0 : last + 1);
  return {file, static_cast<int>(line) + 1, static_cast<int>(column) + 1};
}

}  // namespace

Result<Json> parse_json(std::string_view text, const std::string& file) {
  std::vector<std::set<std::string>> open;
  std::string twice;
  const auto watch = [&](int, Json::parse_event_t event, Json& value) {
    if (event == Json::parse_event_t::object_start) open.emplace_back();
    if (event == Json::parse_event_t::object_end) open.pop_back();
    if (event == Json::parse_event_t::key && !open.back().insert(value.get<std::string>()).second &&
        twice.empty())
      twice = value.get<std::string>();
    return true;
  };
  try {
    Json json = Json::parse(text, watch);
    if (!twice.empty())
      return Problem{{file}, "the key \"" + twice + "\" twice in one object", "each key once", ""};
    return json;
  } catch (const Json::parse_error& error) {
    return Problem{place_of(text, error.byte, file), "something that is no JSON",
                   "one whole JSON document (RFC 8259)",
                   "Look at this place and just before it: a comma, quote or bracket may be missing."};
  }
}

StrictObject::StrictObject(const Json& value, std::string path, std::string file, Problems& problems)
    : value_(&value), path_(std::move(path)), file_(std::move(file)), problems_(&problems) {
  if (value.is_object()) return;
  problems_->push_back(
      {{file_}, (path_.empty() ? "the document" : path_) + ": " + shown(value), "an object", ""});
}

void StrictObject::fault(const char* key, std::string found, std::string expected) {
  const std::string where = path_.empty() ? std::string(key) : path_ + "." + key;
  problems_->push_back({{file_}, where + ": " + std::move(found), std::move(expected), ""});
}

const Json* StrictObject::find(const char* key) {
  asked_.insert(key);
  if (!value_->is_object()) return nullptr;
  const auto it = value_->find(key);
  return it == value_->end() ? nullptr : &*it;
}

const Json* StrictObject::must(const char* key, const char* expected) {
  const Json* value = find(key);
  if (value == nullptr && value_->is_object()) fault(key, "nothing", expected);
  return value;
}

// 5.0 is the whole number 5, as JSON Schema has it.
std::int64_t StrictObject::whole_of(const Json& value, const char* key, WholeRange range) {
  const auto right = [&] { return format("a whole number from {} to {}", range.least, range.most); };
  const bool in_double = value.is_number_float() && std::abs(value.get<double>()) < 9e15 &&
                         std::floor(value.get<double>()) == value.get<double>();
  const bool too_large = value.is_number_unsigned() && value.get<std::uint64_t>() > std::uint64_t{1} << 62U;
  if ((!value.is_number_integer() && !in_double) || too_large) {
    fault(key, shown(value), right());
    return std::clamp<std::int64_t>(1, range.least, range.most);
  }
  const std::int64_t whole =
      in_double ? static_cast<std::int64_t>(value.get<double>()) : value.get<std::int64_t>();
  if (whole < range.least || whole > range.most) {
    fault(key, shown(value), right());
    return std::clamp(whole, range.least, range.most);
  }
  return whole;
}

std::int64_t StrictObject::whole(const char* key, WholeRange range) {
  const Json* value = must(key, "a whole number");
  return value ? whole_of(*value, key, range) : std::clamp<std::int64_t>(1, range.least, range.most);
}

std::int64_t StrictObject::whole_or(const char* key, std::int64_t otherwise, WholeRange range) {
  const Json* value = find(key);
  return value ? whole_of(*value, key, range) : otherwise;
}

std::optional<std::int64_t> StrictObject::whole_or_null(const char* key, WholeRange range) {
  const Json* value = find(key);
  if (value == nullptr || value->is_null()) return std::nullopt;
  return whole_of(*value, key, range);
}

std::optional<double> StrictObject::number_or_null(const char* key) {
  const Json* value = find(key);
  if (value == nullptr || value->is_null()) return std::nullopt;
  if (value->is_number()) return value->get<double>();
  fault(key, shown(*value), "a number or null");
  return std::nullopt;
}

double StrictObject::number_or(const char* key, double otherwise) {
  const Json* value = find(key);
  if (value == nullptr) return otherwise;
  if (value->is_number()) return value->get<double>();
  fault(key, shown(*value), "a number");
  return otherwise;
}

std::string StrictObject::text(const char* key) {
  const Json* value = must(key, "a text");
  if (value == nullptr) return "";
  if (value->is_string()) return value->get<std::string>();
  fault(key, shown(*value), "a text");
  return "";
}

std::string StrictObject::text_or(const char* key, const char* otherwise) {
  const Json* value = find(key);
  if (value == nullptr || (value->is_null() && *otherwise == '\0')) return otherwise;
  if (value->is_string()) return value->get<std::string>();
  fault(key, shown(*value), *otherwise == '\0' ? "a text or null" : "a text");
  return otherwise;
}

bool StrictObject::flag_or(const char* key, bool otherwise) {
  const Json* value = find(key);
  if (value == nullptr) return otherwise;
  if (value->is_boolean()) return value->get<bool>();
  fault(key, shown(*value), "true or false");
  return otherwise;
}

std::vector<std::string> StrictObject::texts(const char* key) {
  std::vector<std::string> list;
  const Json* value = find(key);
  if (value == nullptr) return list;
  const bool right = value->is_array() && std::all_of(value->begin(), value->end(),
                                                      [](const Json& item) { return item.is_string(); });
  if (!right) {
    fault(key, shown(*value), "a list of texts");
    return list;
  }
  for (const Json& item : *value) list.push_back(item.get<std::string>());
  return list;
}

std::vector<StrictObject> StrictObject::items(const Json& value, const char* key) {
  std::vector<StrictObject> list;
  if (!value.is_array()) {
    fault(key, shown(value), "a list of objects");
    return list;
  }
  const std::string path = path_.empty() ? std::string(key) : path_ + "." + key;
  for (std::size_t i = 0; i < value.size(); ++i)
    list.emplace_back(value[i], path + "[" + std::to_string(i) + "]", file_, *problems_);
  return list;
}

std::vector<StrictObject> StrictObject::objects(const char* key) {
  const Json* value = must(key, "a list of objects");
  return value ? items(*value, key) : std::vector<StrictObject>{};
}

std::vector<StrictObject> StrictObject::objects_or_none(const char* key) {
  const Json* value = find(key);
  return value ? items(*value, key) : std::vector<StrictObject>{};
}

std::vector<std::vector<std::int64_t>> StrictObject::pairs(const char* key, WholeRange range) {
  std::vector<std::vector<std::int64_t>> list;
  const Json* value = find(key);
  if (value == nullptr) return list;
  const bool right = value->is_array() && std::all_of(value->begin(), value->end(), [](const Json& item) {
                       return item.is_array() && item.size() == 2;
                     });
  if (!right) {
    fault(key, shown(*value), "a list of pairs of whole numbers, such as [[0, 480]]");
    return list;
  }
  for (const Json& item : *value) {
    list.push_back({whole_of(item[0], key, any_minute), whole_of(item[1], key, range)});
  }
  return list;
}

line::Calendar StrictObject::spans(const char* key) {
  line::Calendar calendar;
  for (const auto& pair : pairs(key, any_minute)) calendar.push_back({pair[0], pair[1]});
  return calendar;
}

void StrictObject::done() {
  if (!value_->is_object()) return;
  const std::vector<std::string> keys(asked_.begin(), asked_.end());
  for (const auto& [key, value] : value_->items()) {
    if (asked_.contains(key)) continue;
    const std::string guess = did_you_mean(key, keys);
    fault(key.c_str(), "a key that means nothing here", guess.empty() ? "one of " + listed(keys) : guess);
  }
}

}  // namespace dampward::files::detail
