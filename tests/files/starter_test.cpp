#include "adapters/files/starter.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>

#include "adapters/files/safe_write.h"
#include "adapters/files/shop_folder.h"
#include "adapters/files/text_file.h"
#include "tests/files/scratch_folder.h"

namespace fs = std::filesystem;
using namespace dampward;
using namespace dampward::files;

namespace {

std::size_t entries_in(const fs::path& folder) {
  return static_cast<std::size_t>(std::distance(fs::directory_iterator(folder), fs::directory_iterator()));
}

}  // namespace

TEST_CASE("a new shop folder is read without a fault or a doubt and has units to plan") {
  const ScratchFolder scratch;
  const auto names = start_folder(scratch.path() / "shop");
  REQUIRE(names.ok());
  const Proof proof = proofread(scratch.path() / "shop");
  for (const Problem& problem : proof.faults) MESSAGE(to_text(problem));
  for (const Problem& problem : proof.warnings) MESSAGE(to_text(problem));
  CHECK(proof.faults.empty());
  CHECK(proof.warnings.empty());
  const auto workshop = read_workshop(scratch.path() / "shop");
  REQUIRE(workshop.ok());
  const auto queue = FolderRecords(scratch.path() / "shop", *workshop).queue();
  REQUIRE(queue.ok());
  CHECK(queue->units.size() >= 2);
  CHECK(queue->starts.has_value());
}

TEST_CASE("every example the program carries is a shop folder without fault") {
  for (const std::string& example : example_folders()) {
    INFO(example);
    const ScratchFolder scratch;
    REQUIRE(start_folder(scratch.path() / "shop", example).ok());
    const Proof proof = proofread(scratch.path() / "shop");
    for (const Problem& problem : proof.faults) MESSAGE(to_text(problem));
    CHECK(proof.faults.empty());
  }
}

TEST_CASE("an existing empty folder is filled, and nothing else is left in it") {
  const ScratchFolder scratch;
  const auto names = start_folder(scratch.path());
  REQUIRE(names.ok());
  CHECK(entries_in(scratch.path()) == names->size());
}

TEST_CASE("a folder that holds something is left as it is") {
  const ScratchFolder scratch;
  scratch.write("mine.txt", "keep me");
  const auto names = start_folder(scratch.path());
  REQUIRE_FALSE(names.ok());
  CHECK(names.problems()[0].found == "a folder that holds something already");
  CHECK(entries_in(scratch.path()) == 1);
}

TEST_CASE("a folder that cannot be written leaves nothing half-written") {
  const ScratchFolder scratch;
  scratch.write("file", "a file, no folder");
  CHECK_FALSE(start_folder(scratch.path() / "file").ok());
  CHECK_FALSE(start_folder(scratch.path() / "file" / "shop").ok());
  CHECK_FALSE(start_folder(scratch.path() / "missing" / "shop").ok());
  CHECK_FALSE(start_folder("/proc/shop").ok());
  CHECK(entries_in(scratch.path()) == 1);
}

TEST_CASE("what a start that was cut short has left is named and never mixed into a new folder") {
  const ScratchFolder scratch;
  fs::create_directory(scratch.path() / "shop.starting");
  scratch.write("shop.starting/old.toml", "x");
  const auto names = start_folder(scratch.path() / "shop");
  REQUIRE_FALSE(names.ok());
  CHECK(names.problems()[0].found == "a folder left by a start that was cut short");
  CHECK(fs::exists(scratch.path() / "shop.starting" / "old.toml"));
  CHECK_FALSE(fs::exists(scratch.path() / "shop"));
}

TEST_CASE("an unknown example is named") {
  const ScratchFolder scratch;
  const auto names = start_folder(scratch.path() / "shop", "strater");
  REQUIRE_FALSE(names.ok());
  CHECK(names.problems()[0].next == "Did you mean \"starter\"?");
  CHECK(entries_in(scratch.path()) == 0);
}

TEST_CASE("a file is written whole, or the old one stays") {
  const ScratchFolder scratch;
  CHECK_FALSE(write_whole(scratch.path() / "report.txt", "first").has_value());
  CHECK_FALSE(write_whole(scratch.path() / "report.txt", "second").has_value());
  CHECK(read_text(scratch.path() / "report.txt", "report.txt").value() == "second");
  CHECK(entries_in(scratch.path()) == 1);
  fs::create_directory(scratch.path() / "taken");
  scratch.write("taken/inside", "x");
  CHECK(write_whole(scratch.path() / "taken", "text").has_value());
  CHECK(entries_in(scratch.path()) == 2);
  CHECK(write_whole("/proc/report.txt", "text").has_value());
}
