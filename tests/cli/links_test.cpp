#include <doctest/doctest.h>

#include <cctype>
#include <filesystem>
#include <map>
#include <regex>
#include <set>

#include "tests/cli/demo_shop.h"
#include "tests/cli/page.h"

// Every link from one page of this project to another leads somewhere, to the very heading.

namespace {

namespace fs = std::filesystem;

// The page without blocks and pieces of code, where brackets mean other things.
std::vector<std::string> prose_of(const fs::path& page) {
  std::vector<std::string> lines;
  bool in_block = false;
  for (const std::string& line : lines_of_text(whole_text(page))) {
    if (line.starts_with("```")) in_block = !in_block;
    lines.push_back(in_block ? "" : line);
  }
  return lines;
}

// A heading as web pages of such text name it: small letters, digits, - and _; blanks become -.
std::string anchor_of(const std::string& heading) {
  std::string anchor;
  for (const char c : heading) {
    const auto byte = static_cast<unsigned char>(c);
    if (c == ' ') anchor += '-';
    if (std::isalnum(byte) != 0 || c == '-' || c == '_' || byte >= 0x80)
      anchor += static_cast<char>(std::tolower(byte));
  }
  return anchor;
}

std::set<std::string> anchors_of(const fs::path& page) {
  std::set<std::string> anchors;
  std::map<std::string, int> seen;
  for (const std::string& line : prose_of(page)) {
    std::smatch match;
    if (!std::regex_match(line, match, std::regex("#+ +(.*)"))) continue;
    const std::string anchor =
        anchor_of(std::regex_replace(match[1].str(), std::regex("\\]\\([^)]*\\)"), ""));
    const int times = seen[anchor]++;
    anchors.insert(times == 0 ? anchor : anchor + "-" + std::to_string(times));
  }
  return anchors;
}

std::vector<fs::path> pages() {
  const fs::path root = DAMPWARD_SOURCE_DIR;
  std::vector<fs::path> all = {root / "README.md", root / "CONTRIBUTING.md"};
  for (const auto& entry : fs::recursive_directory_iterator(root / "docs")) {
    if (entry.path().extension() == ".md") all.push_back(entry.path());
  }
  return all;
}

void check_link(const fs::path& page, const std::string& link) {
  INFO(page.string(), " links to ", link);
  const std::size_t hash = link.find('#');
  const std::string file = link.substr(0, hash);
  const fs::path target = file.empty() ? page : (page.parent_path() / file).lexically_normal();
  CHECK(fs::exists(target));
  if (hash != std::string::npos && target.extension() == ".md" && fs::exists(target))
    CHECK(anchors_of(target).count(link.substr(hash + 1)) == 1);
}

}  // namespace

TEST_CASE("every link of the documentation leads to a page and a heading that are there") {
  static const std::regex link("\\]\\(([^)\\s]+)\\)"), code("`[^`]*`");
  int checked = 0;
  for (const fs::path& page : pages()) {
    for (const std::string& whole : prose_of(page)) {
      const std::string line = std::regex_replace(whole, code, "");
      for (std::sregex_iterator at(line.begin(), line.end(), link), end; at != end; ++at) {
        const std::string target = (*at)[1];
        if (target.find("://") != std::string::npos) continue;
        check_link(page, target);
        ++checked;
      }
    }
  }
  CHECK(checked > 50);
}

TEST_CASE("every page of theory stands in its index") {
  const fs::path folder = DAMPWARD_SOURCE_DIR "/docs/theory";
  const std::string index = whole_text(folder / "README.md");
  for (const auto& entry : fs::directory_iterator(folder)) {
    const std::string name = entry.path().filename().string();
    INFO(name);
    CHECK((name == "README.md" || index.find("](" + name + ")") != std::string::npos));
  }
}

TEST_CASE("the index of theory names every room of the core") {
  const std::string index = whole_text(DAMPWARD_SOURCE_DIR "/docs/theory/README.md");
  for (const auto& entry : fs::directory_iterator(DAMPWARD_SOURCE_DIR "/core")) {
    if (!entry.is_directory()) continue;
    const std::string room = "`core/" + entry.path().filename().string() + "`";
    INFO(room);
    CHECK(index.find(room) != std::string::npos);
  }
}
