#include "adapters/files/event_log.h"

#include <doctest/doctest.h>

#include <fstream>
#include <sstream>
#include <thread>

#include "adapters/files/event_line.h"
#include "adapters/files/sha256.h"
#include "tests/files/scratch_folder.h"

using namespace dampward;
using namespace dampward::files;

namespace {

history::Event event(const char* time, const char* unit = "TD-0311") {
  history::Event told;
  told.kind = history::Kind::unit_received;
  told.at = *parse_instant(std::string("2027-02-01T") + time + ":00Z");
  told.by = PersonId("lead");
  told.unit = UnitId(unit);
  return told;
}

std::string text_of(const ScratchFolder& folder) {
  std::ostringstream text;
  text << std::ifstream(folder.path() / log_name, std::ios::binary).rdbuf();
  return text.str();
}

std::string complaints(const ScratchFolder& folder) {
  const auto log = read_log(folder.path());
  std::string all;
  if (!log) {
    for (const Problem& problem : log.problems()) all += to_text(problem) + "\n";
  }
  return all;
}

bool tells(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

// A log of three events.
struct Kept {
  ScratchFolder folder;
  std::vector<std::string> hashes;
  Kept() {
    for (const char* time : {"07:00", "07:10", "07:20"})
      hashes.push_back(note(folder.path(), event(time)).value().hash);
  }
  void replace(const std::string& old, const std::string& by) const {
    std::string text = text_of(folder);
    const std::size_t at = text.find(old);
    REQUIRE(at != std::string::npos);
    folder.write(log_name, text.replace(at, old.size(), by));
  }
};

}  // namespace

TEST_CASE("SHA-256 gives the published digests") {
  // FIPS 180-4 examples, "abc" and the empty message, as printed in NIST's "SHA256.pdf" of example values (from memory).
  CHECK(sha256_hex("abc") == "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  CHECK(sha256_hex("") == "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
}

TEST_CASE("a line holds the page's keys in the page's order, and its hash is that of the line without it") {
  history::Event told = event("07:00");
  told.id = "e1";
  told.data["why"] = "früh \"da\"";
  const std::string line = event_line(told, "");
  const std::string before =
      "{\"id\":\"e1\",\"at_utc\":\"2027-02-01T07:00:00Z\",\"by\":\"lead\",\"unit\":\"TD-0311\",\"oven\":null,"
      "\"person\":null,\"step\":null,\"kind\":\"unit_received\",\"data\":{\"why\":\"früh "
      "\\\"da\\\"\"},\"corrects\":null,"
      "\"prev_hash\":null";
  CHECK(line == before + ",\"hash\":\"" + sha256_hex(before + "}") + "\"}");
  const auto read = read_event_line(line, {});
  REQUIRE(read.ok());
  CHECK(read->event.data.at("why") == told.data.at("why"));
  CHECK(read->event.at == told.at);
}

TEST_CASE("each line is chained to the one before it") {
  const Kept kept;
  const auto log = read_log(kept.folder.path());
  REQUIRE(log.ok());
  REQUIRE(log->size() == 3);
  CHECK((*log)[2].id == "e3");
  CHECK((*log)[2].place.line == 3);
  CHECK(tells(text_of(kept.folder), "\"prev_hash\":\"" + kept.hashes[1] + "\",\"hash\":\"" + kept.hashes[2]));
}

TEST_CASE("an altered line is named by its number and its hash") {
  const Kept kept;
  kept.replace("07:10:00Z", "07:11:00Z");
  const std::string told = complaints(kept.folder);
  CHECK(tells(told, "log.jsonl line 2"));
  CHECK(tells(told, kept.hashes[1]));
  CHECK_FALSE(tells(told, "line 1"));
}

TEST_CASE("an altered line with a hash of its own breaks the chain at the next") {
  const Kept kept;
  auto log = read_log(kept.folder.path()).value();
  log[1].at += std::chrono::minutes(1);
  const std::string text = text_of(kept.folder);
  const std::size_t first = text.find('\n') + 1, second = text.find('\n', first);
  const std::string line = event_line(log[1], kept.hashes[0]);
  kept.folder.write(log_name, text.substr(0, first) + line + text.substr(second));
  const std::string told = complaints(kept.folder);
  CHECK(tells(told, "log.jsonl line 3"));
  CHECK(tells(told, kept.hashes[1]));
}

TEST_CASE("a line taken out breaks the chain") {
  const Kept kept;
  const std::string text = text_of(kept.folder);
  const std::size_t first = text.find('\n') + 1, second = text.find('\n', first) + 1;
  kept.folder.write(log_name, text.substr(0, first) + text.substr(second));
  CHECK(tells(complaints(kept.folder), "log.jsonl line 2"));
  kept.folder.write(log_name, text.substr(first));
  CHECK(tells(complaints(kept.folder), "log.jsonl line 1"));
}

TEST_CASE("a line that is no event is named with what it should be") {
  const struct {
    const char *old, *by, *told;
  } damages[] = {{"{\"id\":\"e2\"", "id=e2", "no JSON object"},
                 {"\"unit_received\"", "\"unit_dreamt\"", "altered"},
                 {"\"oven\":null,\"person\":null", "\"person\":null,\"oven\":null", "another order"},
                 {"}\n", "} \n", "does not end in its hash"},
                 {"}\n", "}\r\n", "does not end in its hash"},
                 {"}\n", "}\n\n", "no JSON object"}};
  for (const auto& damage : damages) {
    const Kept kept;
    kept.replace(damage.old, damage.by);
    INFO(damage.by);
    CHECK(tells(complaints(kept.folder), damage.told));
  }
}

TEST_CASE("an unknown kind is told with those there are, even in a line with a right hash") {
  const ScratchFolder folder;
  history::Event told = event("07:00");
  told.id = "e1";
  std::string line = event_line(told, "");
  line.replace(line.find("unit_received"), 13, "unit_recieved");
  const std::string hashed = *hashed_text(line);
  folder.write(log_name, hashed.substr(0, hashed.size() - 1) + ",\"hash\":\"" + sha256_hex(hashed) + "\"}\n");
  const std::string complaint = complaints(folder);
  CHECK(tells(complaint, "unit_recieved"));
  CHECK(tells(complaint, "Did you mean \"unit_received\"?"));
}

TEST_CASE("a last line without its end was not written whole, and nothing is added to it") {
  const Kept kept;
  std::string text = text_of(kept.folder);
  text.pop_back();
  kept.folder.write(log_name, text);
  CHECK(tells(complaints(kept.folder), "log.jsonl line 3"));
  CHECK_FALSE(note(kept.folder.path(), event("08:00")).ok());
  CHECK(text_of(kept.folder) == text);
}

TEST_CASE("what contradicts the log is not written") {
  const Kept kept;
  const std::string before = text_of(kept.folder);
  history::Event wrong = event("08:00");
  wrong.corrects = "e9";
  CHECK_FALSE(note(kept.folder.path(), wrong).ok());
  wrong = event("08:00");
  wrong.kind = history::Kind::step_finished;
  wrong.step = "r1.clean";
  CHECK_FALSE(note(kept.folder.path(), wrong).ok());
  CHECK(text_of(kept.folder) == before);
}

TEST_CASE("two who note at the same time both stand in an unbroken chain") {
  const ScratchFolder folder;
  const auto writes = [&](const char* unit) {
    for (int i = 0; i < 10; ++i) (void)note(folder.path(), event("07:00", unit));
  };
  std::thread one(writes, "A-1"), other(writes, "B-1");
  one.join();
  other.join();
  const auto log = read_log(folder.path());
  REQUIRE(log.ok());
  CHECK(log->size() == 20);
}

TEST_CASE("a folder that cannot be written keeps its log and says so") {
  const ScratchFolder folder;
  CHECK_FALSE(note(folder.path() / "nowhere", event("07:00")).ok());
}
