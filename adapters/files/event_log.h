#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/history/event.h"

// What happened, in log.jsonl of a shop folder: JSON Lines chained by hashes (docs/formats/events.md).
namespace dampward::files {

inline constexpr const char* log_name = "log.jsonl";

// The events in the order they were noted; none where there is no log. Problems, each with its line: an altered line (its
// hash named), a broken chain, no JSON, a last line without its end, bytes that are no UTF-8.
Result<std::vector<history::Event>> read_log(const std::filesystem::path& folder);

struct Noted {
  history::Event event;  // with the id it was given
  std::string hash;
};

// Adds the event at the end of the log, which it begins where there is none. Its id is "e" and the line's number. Whole or not
// at all, and on the disk before this returns; others who note at the same time wait. Problems: the log as it stands or
// together with the event is at fault (nothing is written), or the folder cannot be written.
Result<Noted> note(const std::filesystem::path& folder, history::Event event);

}  // namespace dampward::files
