#include "adapters/files/event_line.h"

#include <array>

#include "adapters/files/json_values.h"
#include "adapters/files/sha256.h"
#include "core/base/format.h"
#include "core/base/text.h"

namespace dampward::files {
namespace {

constexpr std::array<const char*, 12> keys = {"id",   "at_utc", "by",   "unit",     "oven",      "person",
                                              "step", "kind",   "data", "corrects", "prev_hash", "hash"};
constexpr std::string_view before_hash = ",\"hash\":\"", after_hash = "\"}";
constexpr std::size_t hash_digits = 64;

Json text_or_null(const std::string& text) {
  return text.empty() ? Json(nullptr) : Json(text);
}

std::string utc_text(Instant at) {
  std::string text = iso_text(at, WallClock(std::chrono::seconds(0)));
  return text.substr(0, text.size() - std::string_view("+00:00").size()) + "Z";
}

bool is_hash(std::string_view text) {
  return text.size() == hash_digits && text.find_first_not_of("0123456789abcdef") == std::string_view::npos;
}

// A value as a complaint shows it.
std::string shown(const Json& value) {
  return value.dump(-1, ' ', false, Json::error_handler_t::replace);
}

// Whether the object holds just the page's keys in the page's order.
bool in_order(const Json& json) {
  if (json.size() != keys.size()) return false;
  std::size_t i = 0;
  for (const auto& [key, value] : json.items()) {
    if (key != keys[i++]) return false;
  }
  return true;
}

std::map<std::string, std::string> texts_in(const Json& value, const Place& place, Problems& problems) {
  std::map<std::string, std::string> told;
  if (!value.is_object() || value.empty()) {
    problems.push_back(
        {place, "data that is " + shown(value), "an object with keys of this kind of event, or null", ""});
    return told;
  }
  for (const auto& [key, item] : value.items()) {
    if (item.is_string() && !item.get<std::string>().empty()) {
      told[key] = item.get<std::string>();
    } else {
      problems.push_back({place, format("\"{}\" in data is {}", key, shown(item)), "a text", ""});
    }
  }
  return told;
}

// Takes values out of one line's object and gathers what is wrong with them.
class Reader {
 public:
  Reader(const Json& json, const Place& place) : json_(json), place_(place) {}

  std::string text(const char* key, bool may_be_null) {
    const Json& value = json_.at(key);
    if (value.is_null() && may_be_null) return "";
    if (value.is_string() && !value.get<std::string>().empty()) return value.get<std::string>();
    fault(key, may_be_null ? "a text, or null" : "a text");
    return "";
  }

  Instant time(const char* key) {
    const std::string written = text(key, false);
    const auto read = parse_instant(written);
    if (read && written.ends_with('Z')) return *read;
    if (!written.empty()) fault(key, "a time in UTC, such as 2027-02-02T08:30:00Z");
    return {};
  }

  std::map<std::string, std::string> data() {
    const Json& value = json_.at("data");
    return value.is_null() ? std::map<std::string, std::string>{} : texts_in(value, place_, problems);
  }

  void fault(const char* key, const std::string& expected) {
    problems.push_back({place_, format("\"{}\" is {}", key, shown(json_.at(key))), expected, ""});
  }

  Problems problems;

 private:
  const Json& json_;
  Place place_;
};

std::string listed_keys() {
  std::vector<std::string> names(keys.begin(), keys.end());
  return listed(names);
}

}  // namespace

std::string event_line(const history::Event& event, std::string_view prev_hash) {
  Json data = nullptr;
  for (const auto& [key, value] : event.data) data[key] = value;
  const Json json = {{"id", event.id},
                     {"at_utc", utc_text(event.at)},
                     {"by", event.by.text},
                     {"unit", text_or_null(event.unit.text)},
                     {"oven", text_or_null(event.oven.text)},
                     {"person", text_or_null(event.person.text)},
                     {"step", text_or_null(event.step)},
                     {"kind", std::string(word(event.kind))},
                     {"data", data},
                     {"corrects", text_or_null(event.corrects)},
                     {"prev_hash", text_or_null(std::string(prev_hash))}};
  std::string text = json.dump(-1, ' ', false, Json::error_handler_t::replace);
  const std::string hash = sha256_hex(text);
  text.pop_back();
  return text + std::string(before_hash) + hash + std::string(after_hash);
}

Result<std::map<std::string, std::string>> read_event_data(std::string_view text, const Place& place) {
  if (text.empty()) return std::map<std::string, std::string>{};
  const Json json = Json::parse(text, nullptr, false);
  if (json.is_discarded()) {
    return Problem{place, "data that is no JSON: " + std::string(text),
                   "an object of texts, such as {\"why\": \"rain\"}",
                   "Put it in single quotes, so that the shell leaves it alone."};
  }
  Problems problems;
  auto told = texts_in(json, place, problems);
  if (!problems.empty()) return problems;
  return told;
}

std::optional<std::string> hashed_text(std::string_view line) {
  const std::size_t tail = before_hash.size() + hash_digits + after_hash.size();
  if (line.size() < tail) return std::nullopt;
  const std::string_view end = line.substr(line.size() - tail);
  if (!end.starts_with(before_hash) || !end.ends_with(after_hash)) return std::nullopt;
  if (!is_hash(end.substr(before_hash.size(), hash_digits))) return std::nullopt;
  return std::string(line.substr(0, line.size() - tail)) + "}";
}

Result<ChainedEvent> read_event_line(std::string_view line, const Place& place) {
  const Json json = Json::parse(line, nullptr, false);
  if (json.is_discarded() || !json.is_object()) {
    return Problem{place, "a line that is no JSON object",
                   "one event as dampward note writes it, and no empty line",
                   "Put back the log as it was last kept; a log is added to, never edited."};
  }
  if (!in_order(json)) {
    return Problem{place, "a line with other keys than an event's, or in another order",
                   "just " + listed_keys() + ", in that order", ""};
  }
  const auto hashed = hashed_text(line);
  if (!hashed) {
    return Problem{place, "a line that does not end in its hash",
                   ",\"hash\":\"…\"} with 64 hexadecimal digits, and nothing behind it but the line's end",
                   "Some editors change the ends of lines: put back the log as it was last kept."};
  }
  Reader reader(json, place);
  ChainedEvent read;
  read.hash = json.at("hash").get<std::string>();
  const std::string computed = sha256_hex(*hashed);
  if (computed != read.hash) {
    return Problem{
        place, format("an altered line: its hash is {}, but its text gives {}", read.hash, computed),
        "the line as it was noted",
        "Put back the log as it was last kept, and correct an event with: dampward note … --corrects ID"};
  }
  read.prev_hash = reader.text("prev_hash", true);
  history::Event& event = read.event;
  event.place = place;
  event.id = reader.text("id", false);
  event.at = reader.time("at_utc");
  event.by = PersonId(reader.text("by", false));
  event.unit = UnitId(reader.text("unit", true));
  event.oven = OvenId(reader.text("oven", true));
  event.person = PersonId(reader.text("person", true));
  event.step = reader.text("step", true);
  event.data = reader.data();
  event.corrects = reader.text("corrects", true);
  const std::string kind = reader.text("kind", false);
  if (const auto known = history::kind_of(kind)) {
    event.kind = *known;
  } else if (!kind.empty()) {
    reader.problems.push_back({place, "the kind \"" + kind + "\", which nobody knows",
                               "one of " + listed(history::kind_words()),
                               did_you_mean(kind, history::kind_words())});
  }
  if (!reader.problems.empty()) return reader.problems;
  return read;
}

}  // namespace dampward::files
