#include "core/history/event.h"

#include <algorithm>

#include "core/base/format.h"
#include "core/base/text.h"

namespace dampward::history {
namespace {

// What a kind says. `why` may stand in the data of every kind.
struct Says {
  Kind kind;
  const char* word;
  std::vector<std::string> must, may;            // of unit, oven, person, step, corrects
  std::vector<std::string> data_must, data_may;  // keys of data; those that end in _at are times
};

// clang-format off
const std::vector<Says>& table() {
  static const std::vector<Says> rows = {
      {Kind::unit_received, "unit_received", {"unit"}, {}, {}, {}},
      {Kind::step_started, "step_started", {"unit", "step"}, {"oven", "person"}, {}, {"station"}},
      {Kind::step_finished, "step_finished", {"unit", "step"}, {"oven", "person"}, {}, {"station", "started_at"}},
      {Kind::window_missed, "window_missed", {"unit"}, {}, {}, {}},
      {Kind::retest_passed, "retest_passed", {"unit", "step"}, {"person"}, {}, {"started_at"}},
      {Kind::retest_failed, "retest_failed", {"unit", "step"}, {"person"}, {}, {"started_at"}},
      {Kind::person_absent, "person_absent", {"person"}, {}, {"until_at"}, {}},
      {Kind::oven_failed, "oven_failed", {"oven"}, {}, {"until_at"}, {}},
      {Kind::lot_opened, "lot_opened", {}, {}, {"lot"}, {}},
      {Kind::event_withdrawn, "event_withdrawn", {"corrects"}, {}, {}, {}},
  };
  return rows;
}
// clang-format on

const Says& says(Kind kind) {
  return table()[static_cast<std::size_t>(kind)];
}

bool holds(const std::vector<std::string>& names, const std::string& name) {
  return std::find(names.begin(), names.end(), name) != names.end();
}

// What the event is about, by the names of the log's keys.
std::vector<std::pair<std::string, const std::string*>> subjects(const Event& event) {
  return {{"unit", &event.unit.text},
          {"oven", &event.oven.text},
          {"person", &event.person.text},
          {"step", &event.step},
          {"corrects", &event.corrects}};
}

std::string all_or_none(const std::vector<std::string>& names) {
  return names.empty() ? "nothing" : listed(names);
}

}  // namespace

std::string_view word(Kind kind) {
  return says(kind).word;
}

std::optional<Kind> kind_of(std::string_view word) {
  for (const Says& row : table()) {
    if (row.word == word) return row.kind;
  }
  return std::nullopt;
}

const std::vector<std::string>& kind_words() {
  static const std::vector<std::string> words = [] {
    std::vector<std::string> all;
    for (const Says& row : table()) all.emplace_back(row.word);
    return all;
  }();
  return words;
}

std::string name_of(const Event& event) {
  std::string about = std::string(word(event.kind));
  for (const auto& [key, text] : subjects(event)) {
    if (!text->empty()) about += " " + *text;
  }
  return format("event {} ({}, noted by {})", event.id, about, event.by.text);
}

Problems faults(const Event& event) {
  Problems problems;
  const Says& row = says(event.kind);
  const auto fault = [&](const std::string& found, const std::string& expected) {
    problems.push_back({event.place, name_of(event) + " " + found, expected, ""});
  };
  if (event.id.empty()) fault("without an id", "a text used once in the log");
  if (event.by.empty()) fault("noted by nobody", "the person who noted it, in \"by\"");
  for (const auto& [key, text] : subjects(event)) {
    // Any event may stand in for an earlier one.
    const bool may = key == "corrects" || holds(row.may, key);
    if (holds(row.must, key) && text->empty())
      fault("without \"" + key + "\"", listed(row.must) + " for this kind");
    if (!holds(row.must, key) && !may && !text->empty())
      fault("with \"" + key + "\"", "null: an event of this kind is not about that");
  }
  std::vector<std::string> known = row.data_must;
  known.insert(known.end(), row.data_may.begin(), row.data_may.end());
  known.emplace_back("why");
  for (const std::string& key : row.data_must) {
    if (!event.data.contains(key))
      fault("without \"" + key + "\" in its data", all_or_none(row.data_must) + " in data");
  }
  for (const auto& [key, value] : event.data) {
    if (!holds(known, key)) {
      fault("with \"" + key + "\" in its data", "of " + listed(known));
    } else if (key.ends_with("_at") && !parse_instant(value)) {
      fault(format("with {} \"{}\"", key, value), "a time with Z or offset, such as 2027-02-02T08:30:00Z");
    } else if (key == "until_at" && *parse_instant(value) <= event.at) {
      fault(format("that ends at {}, before it begins", value), "a later time");
    } else if (key == "started_at" && *parse_instant(value) > event.at) {
      fault(format("that began at {}, after it was finished", value), "a beginning before the end");
    }
  }
  return problems;
}

}  // namespace dampward::history
