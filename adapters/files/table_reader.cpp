#include "adapters/files/table_reader.h"

#include <algorithm>
#include <cmath>

#include "core/base/format.h"
#include "core/base/text.h"

namespace dampward::files {
namespace {

std::string said(std::string_view key, const TomlNode& value) {
  return format("{} = {}", key, described(value));
}

}  // namespace

TableReader::TableReader(const TomlNode& table, std::string name, Proof& proof)
    : table_(table), name_(std::move(name)), proof_(proof) {}

const TomlNode* TableReader::node(std::string_view key) {
  if (std::find(asked_.begin(), asked_.end(), key) == asked_.end()) asked_.emplace_back(key);
  return table_.find(key);
}

Place TableReader::place(std::string_view key) const {
  const TomlNode* value = table_.find(key);
  return value == nullptr ? table_.place : value->place;
}

std::optional<std::string> TableReader::text(std::string_view key) {
  const TomlNode* value = node(key);
  if (value == nullptr) return std::nullopt;
  if (value->type != TomlNode::Type::text) {
    proof_.faults.push_back({value->place, said(key, *value), "a text in quotes", ""});
    return std::nullopt;
  }
  return std::string(trimmed(value->text));
}

std::string TableReader::needed_text(std::string_view key) {
  if (!has(key)) missing(key, "a text in quotes");
  const auto value = text(key);
  if (value && value->empty()) fault(key, "which is empty", "a text");
  return value.value_or("");
}

std::string TableReader::text_or(std::string_view key, std::string_view otherwise) {
  return text(key).value_or(std::string(otherwise));
}

std::vector<std::string> TableReader::texts(std::string_view key) {
  std::vector<std::string> all;
  const TomlNode* value = node(key);
  if (value == nullptr) return all;
  if (value->type == TomlNode::Type::text) return {std::string(trimmed(value->text))};
  if (value->type != TomlNode::Type::list) {
    proof_.faults.push_back(
        {value->place, said(key, *value), "a list of texts such as [\"test\", \"strip\"]", ""});
    return all;
  }
  for (const TomlNode& item : value->items) {
    if (item.type == TomlNode::Type::text) {
      all.emplace_back(trimmed(item.text));
    } else {
      proof_.faults.push_back({item.place, said(key, item), "a text in quotes", ""});
    }
  }
  return all;
}

std::vector<std::string> TableReader::known_texts(std::string_view key, std::span<const std::string> known,
                                                  std::string_view what) {
  std::vector<std::string> all = texts(key);
  const TomlNode* value = table_.find(key);
  const auto unknown = [&](const std::string& word) {
    if (std::find(known.begin(), known.end(), word) != known.end()) return false;
    Place where = value->place;
    for (const TomlNode& item : value->items) {
      if (trimmed(item.text) == word) where = item.place;
    }
    const std::string guess = did_you_mean(word, known);
    const std::string expected =
        known.size() <= 20 ? "one of " + listed(known) : format("the name of a {}", what);
    proof_.faults.push_back(
        {where, format("{} \"{}\", a {} nobody knows", key, word, what), expected, guess});
    return true;
  };
  std::erase_if(all, unknown);
  return all;
}

std::optional<std::string> TableReader::known_text(std::string_view key, std::span<const std::string> known,
                                                   std::string_view what) {
  auto word = text(key);
  if (!word) return std::nullopt;
  if (std::find(known.begin(), known.end(), *word) != known.end()) return word;
  const std::string expected =
      known.size() <= 20 ? "one of " + listed(known) : format("the name of a {}", what);
  fault(key, format("a {} nobody knows", what), expected, did_you_mean(*word, known));
  return std::nullopt;
}

bool TableReader::truth(std::string_view key, bool otherwise) {
  const TomlNode* value = node(key);
  if (value == nullptr) return otherwise;
  if (value->type == TomlNode::Type::truth) return value->truth;
  proof_.faults.push_back({value->place, said(key, *value), "true or false, without quotes", ""});
  return otherwise;
}

std::optional<double> TableReader::number(std::string_view key, double lowest, double highest) {
  const TomlNode* value = node(key);
  if (value == nullptr) return std::nullopt;
  const bool is_number = value->type == TomlNode::Type::number && std::isfinite(value->number);
  if (!is_number || value->number < lowest || value->number > highest) {
    proof_.faults.push_back({value->place, said(key, *value),
                             format("a number from {} to {}, without quotes", lowest, highest), ""});
    return std::nullopt;
  }
  return value->number;
}

std::optional<int> TableReader::whole(std::string_view key, int lowest, int highest) {
  const TomlNode* value = node(key);
  if (value == nullptr) return std::nullopt;
  const double n = value->number;
  if (value->type != TomlNode::Type::number || !(n >= lowest && n <= highest) || n != std::floor(n)) {
    proof_.faults.push_back({value->place, said(key, *value),
                             format("a whole number from {} to {}, without quotes", lowest, highest), ""});
    return std::nullopt;
  }
  return static_cast<int>(n);
}

std::optional<Date> TableReader::date(std::string_view key) {
  const TomlNode* value = node(key);
  if (value == nullptr) return std::nullopt;
  const bool may_be = value->type == TomlNode::Type::date || value->type == TomlNode::Type::text;
  const auto date = may_be ? parse_date(value->text) : std::nullopt;
  if (!date) {
    proof_.faults.push_back(
        {value->place, said(key, *value), "a date written year-month-day, such as 2026-11-30", ""});
  }
  return date;
}

const TomlNode* TableReader::table(std::string_view key) {
  const TomlNode* value = node(key);
  if (value == nullptr || value->type == TomlNode::Type::table) return value;
  proof_.faults.push_back({value->place, said(key, *value), format("a table: {} = {{ … }}", key), ""});
  return nullptr;
}

std::vector<const TomlNode*> TableReader::tables(std::string_view key) {
  std::vector<const TomlNode*> all;
  const TomlNode* value = node(key);
  if (value == nullptr) return all;
  const bool is_list = value->type == TomlNode::Type::list;
  for (const TomlNode& item : is_list ? std::span(value->items) : std::span(value, 1)) {
    if (item.type == TomlNode::Type::table) {
      all.push_back(&item);
    } else {
      proof_.faults.push_back(
          {item.place, said(key, item), format("tables in a list: {} = [{{ … }}]", key), ""});
    }
  }
  return all;
}

void TableReader::fault(std::string_view key, std::string_view why, std::string_view expected,
                        std::string_view next) {
  const TomlNode* value = table_.find(key);
  const std::string found = value == nullptr ? std::string(key) : said(key, *value);
  proof_.faults.push_back(
      {place(key), format("{}, {}", found, why), std::string(expected), std::string(next)});
}

void TableReader::warn(std::string_view key, std::string_view why, std::string_view expected,
                       std::string_view next) {
  const TomlNode* value = table_.find(key);
  const std::string found = value == nullptr ? std::string(key) : said(key, *value);
  proof_.warnings.push_back(
      {place(key), format("{}, {}", found, why), std::string(expected), std::string(next)});
}

void TableReader::missing(std::string_view key, std::string_view expected) {
  if (std::find(asked_.begin(), asked_.end(), key) == asked_.end()) asked_.emplace_back(key);
  proof_.faults.push_back(
      {table_.place, format("{} without {}", name_, key), format("{} = {}", key, expected), ""});
}

void TableReader::finish() {
  std::vector<std::string> unused;
  for (const std::string& key : asked_) {
    if (!has(key)) unused.push_back(key);
  }
  for (const TomlNode& item : table_.items) {
    if (std::find(asked_.begin(), asked_.end(), item.key) != asked_.end()) continue;
    std::string guess = did_you_mean(item.key, unused);
    if (guess.empty()) guess = did_you_mean(item.key, asked_);
    proof_.faults.push_back({item.key_place, format("the unknown key \"{}\" in {}", item.key, name_),
                             unused.empty() ? "no further key" : "one of " + listed(unused),
                             guess.empty() ? "Correct the key, or put # before the line." : guess});
  }
}

std::optional<std::string> TableReader::figure_text(const TomlNode& value, std::string_view key,
                                                    std::string_view expected) {
  if (value.type == TomlNode::Type::text) return value.text;
  if (value.type == TomlNode::Type::number && std::isfinite(value.number)) return format("{}", value.number);
  proof_.faults.push_back({value.place, said(key, value), std::string(expected), ""});
  return std::nullopt;
}

void TableReader::refuse(const TomlNode& value, std::string_view key, Problem problem) {
  problem.place = value.place;
  problem.found = format("{} = {}", key, problem.found);
  proof_.faults.push_back(std::move(problem));
}

void TableReader::wrong_list(std::string_view key, const TomlNode& found, std::size_t count,
                             std::string_view each) {
  const std::string what =
      found.type == TomlNode::Type::list ? format("a list of {}", found.items.size()) : described(found);
  proof_.faults.push_back(
      {found.place, format("{} = {}", key, what), format("a list of {}, each {}", count, each), ""});
}

}  // namespace dampward::files
