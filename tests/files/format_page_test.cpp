// The page for people who write shop folders must not promise what the reader refuses.
#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <string>
#include <vector>

#include "adapters/files/shop_folder.h"
#include "adapters/files/starter.h"
#include "adapters/files/text_file.h"
#include "tests/files/scratch_folder.h"

using namespace dampward;
using namespace dampward::files;

namespace {

std::string page() {
  return read_text(DAMPWARD_SOURCE_DIR "/docs/formats/shop-folder.md", "shop-folder.md").value();
}

// The texts of all blocks of one language, in order.
std::vector<std::string> blocks(const std::string& language) {
  std::vector<std::string> all;
  const std::string text = page(), opening = "```" + language + "\n";
  for (std::size_t at = text.find(opening); at != std::string::npos; at = text.find(opening, at)) {
    at += opening.size();
    all.push_back(text.substr(at, text.find("```", at) - at));
  }
  return all;
}

}  // namespace

TEST_CASE("the examples of the format page together are a shop folder without fault or doubt") {
  const ScratchFolder scratch;
  REQUIRE(start_folder(scratch.path(), "demo").ok());  // for its weather file
  for (const auto& entry : std::filesystem::directory_iterator(scratch.path())) {
    if (entry.path().extension() != ".epw") std::filesystem::remove_all(entry.path());
  }
  std::string all;
  for (const std::string& block : blocks("toml")) all += block + "\n";
  scratch.write("shop.toml", all);
  const std::vector<std::string> sheets = blocks("csv");
  REQUIRE(sheets.size() == 3);
  scratch.write("queue.csv", sheets[0]);
  scratch.write("stock.csv", sheets[1]);
  scratch.write("air.csv", sheets[2]);

  const Proof proof = proofread(scratch.path());
  for (const Problem& problem : proof.faults) MESSAGE(to_text(problem));
  for (const Problem& problem : proof.warnings) MESSAGE(to_text(problem));
  CHECK(proof.faults.empty());
  CHECK(proof.warnings.empty());
}

TEST_CASE("every key the starter shows is explained on the format page") {
  const std::string text = page();
  for (const char* name : {"site.toml", "ovens.toml", "spray.toml", "crew.toml", "stations.toml",
                           "materials.toml", "kinds.toml"}) {
    const std::string starter =
        read_text(std::string(DAMPWARD_SOURCE_DIR "/data/starter/") + name, name).value();
    for (std::size_t at = 0; at < starter.size(); at = starter.find('\n', at) + 1) {
      std::string line = starter.substr(at, starter.find('\n', at) - at);
      if (line.starts_with("# ")) line.erase(0, 2);
      const std::string key = line.substr(0, line.find(" = "));
      const bool is_key = line.find(" = ") != std::string::npos && !key.empty() &&
                          key.find_first_not_of("abcdefghijklmnopqrstuvwxyz_") == std::string::npos;
      INFO(name, ": ", key);
      CHECK((!is_key || text.find(key) != std::string::npos));
      if (starter.find('\n', at) == std::string::npos) break;
    }
  }
}
