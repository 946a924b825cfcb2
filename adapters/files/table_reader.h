#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "adapters/files/proof.h"
#include "adapters/files/quantity_text.h"
#include "adapters/files/toml_document.h"
#include "core/base/civil_time.h"

namespace dampward::files {

// A word a key may hold, and what it stands for.
template <class E>
struct Word {
  std::string_view word;
  E meaning;
};

// Reads one table key by key into typed values. Every fault goes to the proof and reading goes on; a value that cannot
// be read comes back empty. It remembers what was asked for, so that finish() can name the keys nobody asked for.
class TableReader {
 public:
  // `name` is the table as a person would look for it: "[ovens.cabinet]".
  TableReader(const TomlNode& table, std::string name, Proof& proof);

  bool has(std::string_view key) const { return table_.find(key) != nullptr; }
  // The value of a key, remembered as asked for; null when it is not there.
  const TomlNode* node(std::string_view key);
  Place place(std::string_view key) const;  // of the value; of the table where the key is missing
  Place place() const { return table_.place; }
  const std::string& name() const { return name_; }
  Proof& proof() { return proof_; }

  std::optional<std::string> text(std::string_view key);
  std::string needed_text(std::string_view key);
  std::string text_or(std::string_view key, std::string_view otherwise);
  // A list of texts; one text alone counts as a list of one. Missing: empty.
  std::vector<std::string> texts(std::string_view key);
  // Texts that must be among the known words (did you mean …?); unknown ones are faults and left out.
  std::vector<std::string> known_texts(std::string_view key, std::span<const std::string> known,
                                       std::string_view what);
  // A text that must be among the known words.
  std::optional<std::string> known_text(std::string_view key, std::span<const std::string> known,
                                        std::string_view what);

  bool truth(std::string_view key, bool otherwise);
  std::optional<int> whole(std::string_view key, int lowest, int highest);
  // A plain number from lowest to highest.
  std::optional<double> number(std::string_view key, double lowest, double highest);
  // A TOML date, or a text such as "2026-11-30".
  std::optional<Date> date(std::string_view key);

  template <class T>
  std::optional<Range<T>> range(std::string_view key) {
    const TomlNode* value = node(key);
    return value == nullptr ? std::nullopt : range_of<T>(*value, key);
  }
  template <class T>
  std::optional<T> quantity(std::string_view key) {
    const TomlNode* value = node(key);
    return value == nullptr ? std::nullopt : quantity_of<T>(*value, key);
  }
  template <class T>
  std::optional<T> needed_quantity(std::string_view key) {
    if (!has(key)) missing(key, looks_like<T>());
    return quantity<T>(key);
  }
  template <class T>
  std::optional<Range<T>> needed_range(std::string_view key) {
    if (!has(key)) missing(key, looks_like<T>());
    return range<T>(key);
  }
  // As needed_quantity, and above zero.
  template <class T>
  std::optional<T> needed_size(std::string_view key) {
    const auto value = needed_quantity<T>(key);
    if (value && *value <= T{}) {
      fault(key, "which is zero", "a size above zero");
      return std::nullopt;
    }
    return value;
  }
  // Exactly `count` values in a list: size = ["900 mm", "600 mm", "1200 mm"].
  template <class T>
  std::vector<Range<T>> ranges(std::string_view key, std::size_t count) {
    std::vector<Range<T>> values;
    const TomlNode* list = node(key);
    if (list == nullptr) return values;
    if (list->type != TomlNode::Type::list || list->items.size() != count) {
      wrong_list(key, *list, count, looks_like<T>());
      return values;
    }
    for (const TomlNode& item : list->items) {
      if (const auto value = range_of<T>(item, key)) values.push_back(*value);
    }
    if (values.size() != count) values.clear();
    return values;
  }

  template <class E, std::size_t N>
  std::optional<E> choice(std::string_view key, const Word<E> (&words)[N]) {
    std::vector<std::string> known;
    for (const auto& word : words) known.emplace_back(word.word);
    const auto text = known_text(key, known, "word");
    if (!text) return std::nullopt;
    for (const auto& word : words) {
      if (word.word == *text) return word.meaning;
    }
    return std::nullopt;
  }

  // A table below this one; null when missing, a fault when it is no table.
  const TomlNode* table(std::string_view key);
  // Every item of a list of tables.
  std::vector<const TomlNode*> tables(std::string_view key);

  // Tells of the value of a key: "key = value, why".
  void fault(std::string_view key, std::string_view why, std::string_view expected,
             std::string_view next = "");
  void warn(std::string_view key, std::string_view why, std::string_view expected,
            std::string_view next = "");
  void missing(std::string_view key, std::string_view expected);
  // Names the keys nobody asked for.
  void finish();

 private:
  template <class T>
  std::optional<Range<T>> range_of(const TomlNode& value, std::string_view key) {
    const auto text = figure_text(value, key, looks_like<T>());
    if (!text) return std::nullopt;
    const auto result = range_from_text<T>(*text);
    if (result) return *result;
    refuse(value, key, result.problems().front());
    return std::nullopt;
  }
  template <class T>
  std::optional<T> quantity_of(const TomlNode& value, std::string_view key) {
    const auto text = figure_text(value, key, looks_like<T>());
    if (!text) return std::nullopt;
    const auto result = quantity_from_text<T>(*text);
    if (result) return *result;
    refuse(value, key, result.problems().front());
    return std::nullopt;
  }
  std::optional<std::string> figure_text(const TomlNode& value, std::string_view key,
                                         std::string_view expected);
  void refuse(const TomlNode& value, std::string_view key, Problem problem);
  void wrong_list(std::string_view key, const TomlNode& found, std::size_t count, std::string_view each);

  const TomlNode& table_;
  std::string name_;
  Proof& proof_;
  std::vector<std::string> asked_;
};

}  // namespace dampward::files
