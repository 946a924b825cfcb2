#include "adapters/files/event_log.h"

#include <fcntl.h>
#include <sys/file.h>
#include <unistd.h>

#include <fstream>
#include <sstream>

#include "adapters/files/event_line.h"
#include "adapters/files/safe_write.h"
#include "adapters/files/text_file.h"
#include "core/base/format.h"
#include "core/base/text.h"
#include "core/history/history.h"

namespace dampward::files {
namespace {

namespace fs = std::filesystem;

// The log as it stands on the disk, read and checked.
struct Log {
  std::string text;
  std::vector<history::Event> events;
  std::string last_hash;
};

Problem broken_chain(const Place& place, const ChainedEvent& line, const std::string& before) {
  return {
      place,
      format("line {} with hash {} that follows {}", place.line, line.hash,
             line.prev_hash.empty() ? "nothing" : "hash " + line.prev_hash),
      before.empty() ? "\"prev_hash\": null in the first line" : "the hash of the line before it, " + before,
      "A line is missing, was put in or moved: put back the log as it was last kept."};
}

Result<Log> read_whole(const fs::path& folder) {
  std::error_code error;
  Log log;
  if (!fs::exists(folder / log_name, error)) return log;
  // For its complaints; the bytes themselves count, so that no mark or encoding slips in.
  const auto readable = read_text(folder / log_name, log_name);
  if (!readable) return readable.problems();
  std::ostringstream bytes;
  bytes << std::ifstream(folder / log_name, std::ios::binary).rdbuf();
  log.text = bytes.str();
  if (log.text != *readable) {
    return Problem{{log_name},
                   "a byte-order mark, or bytes that are no UTF-8",
                   "plain UTF-8 as dampward note writes it",
                   "Put back the log as it was last kept."};
  }
  if (log.text.empty()) return log;
  Problems problems;
  std::vector<std::string_view> lines = split(log.text, '\n');
  const int count = static_cast<int>(lines.size());
  if (!lines.back().empty()) {
    problems.push_back({{log_name, count},
                        "a last line without its end: it was not written whole",
                        "a newline behind the last event",
                        "Cut that line off, after reading what it says, and note its event again."});
  }
  lines.pop_back();
  for (int i = 0; i < static_cast<int>(lines.size()); ++i) {
    const Place place{log_name, i + 1};
    const auto line = read_event_line(lines[static_cast<std::size_t>(i)], place);
    if (!line) {
      problems.insert(problems.end(), line.problems().begin(), line.problems().end());
      // The next line's hash is judged by what this one says of itself only where it can be read.
      log.last_hash.clear();
      continue;
    }
    const bool judged = i == 0 || !log.last_hash.empty();
    if (judged && line->prev_hash != log.last_hash)
      problems.push_back(broken_chain(place, *line, log.last_hash));
    log.last_hash = line->hash;
    log.events.push_back(line->event);
  }
  if (!problems.empty()) return problems;
  return log;
}

// Keeps others who note in the same folder waiting while it lives.
class FolderLock {
 public:
  explicit FolderLock(const fs::path& folder)
      : handle_(open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC)) {
    if (handle_ >= 0) flock(handle_, LOCK_EX);
  }
  ~FolderLock() {
    if (handle_ >= 0) close(handle_);
  }
  FolderLock(const FolderLock&) = delete;
  FolderLock& operator=(const FolderLock&) = delete;

 private:
  int handle_;
};

}  // namespace

Result<std::vector<history::Event>> read_log(const fs::path& folder) {
  auto log = read_whole(folder);
  if (!log) return log.problems();
  return std::move(log).value().events;
}

Result<Noted> note(const fs::path& folder, history::Event event) {
  const FolderLock lock(folder);
  auto read = read_whole(folder);
  if (!read) return read.problems();
  Log log = std::move(read).value();
  event.id = "e" + std::to_string(log.events.size() + 1);
  event.place = {"command line"};
  std::vector<history::Event> events = log.events;
  events.push_back(event);
  const auto history = history::read_history(events);
  if (!history) return history.problems();
  const std::string line = event_line(event, log.last_hash);
  const auto written = read_event_line(line, event.place);
  if (!written) return written.problems();
  if (auto problem = write_whole(folder / log_name, log.text + line + "\n")) return *problem;
  return Noted{event, written->hash};
}

}  // namespace dampward::files
