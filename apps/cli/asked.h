#pragma once

#include <array>
#include <initializer_list>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "adapters/files/quantity_text.h"
#include "adapters/files/table_reader.h"
#include "apps/cli/call.h"
#include "core/base/problem.h"

namespace dampward::cli {

// Reads the options of a question as what they mean. Every fault is gathered and reading goes on; an option that was not given,
// or cannot be read, comes back empty.
class Asked {
 public:
  explicit Asked(const Call& call) : call_(call) {}

  bool has(const std::string& option) const { return call_.asked.contains(option); }
  // As written; none: not given.
  std::optional<std::string> text(const std::string& option) const;
  // A whole number from lowest to highest.
  std::optional<int> whole(const std::string& option, int lowest, int highest);
  // One of the known words.
  std::optional<std::string> known(const std::string& option, std::span<const std::string> words);
  template <class E, std::size_t N>
  std::optional<E> word(const std::string& option, const files::Word<E> (&words)[N]) {
    std::vector<std::string> all;
    for (const auto& word : words) all.emplace_back(word.word);
    const auto found = known(option, all);
    if (!found) return std::nullopt;
    for (const auto& word : words) {
      if (word.word == *found) return word.meaning;
    }
    return std::nullopt;
  }
  template <class T>
  std::optional<T> quantity(const std::string& option) {
    return taken(option, text(option), [](const std::string& t) { return files::quantity_from_text<T>(t); });
  }
  template <class T>
  std::optional<Range<T>> range(const std::string& option) {
    return taken(option, text(option), [](const std::string& t) { return files::range_from_text<T>(t); });
  }
  // The same, above zero: a size, an amount, a rate.
  template <class T>
  std::optional<T> size(const std::string& option) {
    const auto value = quantity<T>(option);
    return value && !above_zero(option, *value > T{}) ? std::nullopt : value;
  }
  template <class T>
  std::optional<Range<T>> sizes(const std::string& option) {
    const auto value = range<T>(option);
    if (value && !value->ordered()) {
      fault(option, "a range out of order", "lowest..typical..highest");
      return std::nullopt;
    }
    return value && !above_zero(option, value->low > T{}) ? std::nullopt : value;
  }

  // Three sides, as of a room.
  std::optional<std::array<Length, 3>> box(const std::string& option) {
    return taken(option, text(option), files::box_from_text);
  }

  // How warm and how damp some air is.
  std::optional<files::WrittenAir> air(const std::string& option) {
    return taken(option, text(option), files::air_from_text);
  }

  // Names the fault of an option: what was found in it, what would be right.
  void fault(const std::string& option, const std::string& found, const std::string& expected,
             const std::string& next = "");
  // Options that belong to another way of asking: each that was given is a fault, and `belongs` says where it would be right.
  void out_of_place(std::initializer_list<const char*> options, const std::string& belongs);
  // An option the question cannot do without.
  void missing(const std::string& option, const std::string& expected);

  const Problems& problems() const { return problems_; }

 private:
  template <class Read>
  auto taken(const std::string& option, const std::optional<std::string>& written, const Read& read)
      -> std::optional<std::decay_t<decltype(*read(*written))>> {
    if (!written) return std::nullopt;
    const auto value = read(*written);
    if (value) return *value;
    for (const Problem& problem : value.problems())
      fault(option, problem.found, problem.expected, problem.next);
    return std::nullopt;
  }
  bool above_zero(const std::string& option, bool is_above);

  const Call& call_;
  Problems problems_;
};

}  // namespace dampward::cli
