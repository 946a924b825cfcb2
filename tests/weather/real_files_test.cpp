// Every real weather file at hand, against plain counts made here without our reader.
#include <doctest/doctest.h>

#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <set>
#include <string>
#include <vector>

#include "adapters/files/weather.h"
#include "core/base/text.h"
#include "workbench/exposure_report.h"

using namespace dampward;
namespace fs = std::filesystem;

namespace {

std::vector<fs::path> real_files() {
  const char* given = std::getenv("DAMPWARD_DATA");
  const fs::path folder =
      (given ? fs::path(given) : fs::path(DAMPWARD_SOURCE_DIR) / "../shared/data") / "weather";
  std::set<fs::path> files;
  if (fs::is_directory(folder)) {
    for (const auto& entry : fs::directory_iterator(folder)) files.insert(entry.path());
  }
  return {files.begin(), files.end()};
}

struct PlainCounts {
  int hours = 0, wet = 0, above_100 = 0, dew_above_dry = 0;
};

// EPW and TMY3 CSV by fixed places of their columns.
PlainCounts plain_counts(const fs::path& path) {
  const bool is_epw = path.extension() == ".epw";
  const std::size_t dry = is_epw ? 6 : 31, dew = is_epw ? 7 : 34, humidity = is_epw ? 8 : 37;
  std::ifstream file(path);
  std::string line;
  for (int i = 0; i < (is_epw ? 8 : 2); ++i) std::getline(file, line);
  PlainCounts counts;
  while (std::getline(file, line)) {
    const auto fields = split(line, ',');
    if (fields.size() <= humidity) continue;
    const auto number = [&](std::size_t i) { return std::stod(std::string(fields[i])); };
    ++counts.hours;
    counts.wet += number(humidity) > 80 && number(dry) > 0;
    counts.above_100 += number(humidity) > 100;
    counts.dew_above_dry += number(dew) > number(dry);
  }
  return counts;
}

}  // namespace

TEST_CASE("every real weather year is read whole and its hours agree with a plain count") {
  const auto files = real_files();
  if (files.empty()) MESSAGE("the real weather files are not here; skipped");
  for (const fs::path& path : files) {
    CAPTURE(path.filename().string());
    const auto weather = files::read_weather(path, path.filename().string());
    REQUIRE(weather.ok());
    CHECK(weather->gaps.empty());
    CHECK(weather->filled_hours == 0);
    const auto report = workbench::exposure_report(*weather);
    CHECK(report.storage.size() == 5);
    if (weather->kind == "NSRDB CSV") {
      CHECK(report.hours == 8760);
      continue;
    }
    const PlainCounts plain = plain_counts(path);
    CHECK(report.hours == plain.hours);
    CHECK(report.wet_hours == plain.wet);
    CHECK(report.clamped_hours == plain.above_100);
    CHECK(report.dew_above_dry_hours == plain.dew_above_dry);
  }
}

TEST_CASE("the real oddities come through: a leap year, humidity of 102 %, dew points above the air") {
  for (const fs::path& path : real_files()) {
    const std::string file = path.filename().string();
    if (file.find("Golden") == std::string::npos && file.find("Fairbanks") == std::string::npos) continue;
    const auto weather = files::read_weather(path, file);
    REQUIRE(weather.ok());
    if (file.find("Golden") != std::string::npos) {
      CHECK(weather->hours.size() == 8784);
      CHECK(weather->clamped_hours == 82);
    } else {
      CHECK(weather->dew_above_dry_hours == 8);
    }
  }
}

TEST_CASE(
    "hot damp coasts grow mould in a shed, deserts and the Arctic do not, and heat in the case prevents it") {
  for (const fs::path& path : real_files()) {
    const std::string file = path.filename().string();
    CAPTURE(file);
    const auto has = [&](const char* place) { return file.find(place) != std::string::npos; };
    const auto weather = files::read_weather(path, file);
    REQUIRE(weather.ok());
    const auto shed = exposure::expose(*weather, shop::Storage::open_shed);
    const auto heated = exposure::expose(*weather, shop::Storage::heated_case);
    if (has("Guam") || has("GTM") || has("Hilo") || has("CUB")) CHECK(shed.mould_max[0] >= 3);
    if (has("Phoenix") || has("phoenix") || has("Barrow") || has("Golden")) CHECK(shed.mould_max[0] < 1);
    CHECK(heated.mould_max[0] < 1);
    for (std::size_t i = 1; i < 4; ++i) CHECK(shed.mould_max[i] <= shed.mould_max[i - 1]);
  }
}
