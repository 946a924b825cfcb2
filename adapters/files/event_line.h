#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>

#include "core/base/result.h"
#include "core/history/event.h"

// One event as one line of log.jsonl (docs/formats/events.md).
namespace dampward::files {

// The line without its newline, keys in the page's order, chained to the hash before it ("": the first line).
std::string event_line(const history::Event& event, std::string_view prev_hash);

// An event with the two hashes of its line.
struct ChainedEvent {
  history::Event event;
  std::string prev_hash;  // empty: null
  std::string hash;       // as written
};

// The event of one line, its own hash checked. Problems at `place`: no JSON, other keys or another order than the page's, a
// value of the wrong type, an unknown kind, a hash that is not that of the line's text.
Result<ChainedEvent> read_event_line(std::string_view line, const Place& place);

// The data of an event as a person writes it: a JSON object of texts; empty text: none.
Result<std::map<std::string, std::string>> read_event_data(std::string_view text, const Place& place);

// The text whose SHA-256 is the line's hash; nothing where the line does not end in one.
std::optional<std::string> hashed_text(std::string_view line);

}  // namespace dampward::files
