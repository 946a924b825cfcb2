#include "adapters/files/messages.h"

#include <doctest/doctest.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <regex>

using namespace dampward;

TEST_CASE("no sentence of the sheets lets a line end between a number and its unit") {
  const std::regex parted(R"([0-9] (min|mL|mm|cm|kg|µm|kV|V|W|A|%|s|K|h|m|L|°C|MΩ)(?![A-Za-zÀ-ÿ]))");
  int files = 0;
  for (const auto& file : std::filesystem::directory_iterator(DAMPWARD_SOURCE_DIR "/data/messages")) {
    std::ifstream in(file.path());
    const std::string all{std::istreambuf_iterator<char>(in), {}};
    std::smatch found;
    INFO(file.path().filename().string());
    const bool is_parted = std::regex_search(all, found, parted);
    CHECK_FALSE_MESSAGE(is_parted, found.str());
    ++files;
  }
  CHECK(files > 5);
}
