#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "tests/exposure/made_weather.h"
#include "workbench/exposure_report.h"

using namespace dampward;
using namespace dampward::workbench;
using moist_air::HumidAir;
using shop::Storage;

namespace {

// A year on a hot damp coast: 24 to 32 °C, 55 to 95 %.
exposure::Weather coast() {
  return exposure::made_weather(8760, [](int i) {
    const double swing = std::sin(2 * M_PI * (i % 24 - 9) / 24);
    return HumidAir{Temperature::celsius(28 + 4 * swing), RelativeHumidity::percent(77 - 18 * swing)};
  });
}

bool any_holds(const std::vector<std::string>& sentences, const std::string& piece) {
  return std::any_of(sentences.begin(), sentences.end(),
                     [&](const std::string& sentence) { return sentence.find(piece) != std::string::npos; });
}

}  // namespace

TEST_CASE("a report answers for every way of storing unless asked for some, each once") {
  CHECK(exposure_report(coast()).storage.size() == 5);
  ExposureQuestion question;
  question.storage = {Storage::closed_case, Storage::open_shed, Storage::closed_case};
  const ExposureReport report = exposure_report(coast(), question);
  REQUIRE(report.storage.size() == 2);
  CHECK(report.storage[0].storage == Storage::closed_case);
  CHECK(report.hours == 8760);
}

TEST_CASE("measured salt goes before the distance to the surf, and that before not knowing") {
  ExposureQuestion question;
  CHECK(exposure_report(coast(), question).corrosion.salt.source.starts_with("unknown"));
  question.surf_distance = 400 * metre;
  CHECK(exposure_report(coast(), question).corrosion.salt.source.starts_with("estimated from 400 m"));
  question.salt = 60 * milligram_per_square_metre_day;
  const ExposureReport report = exposure_report(coast(), question);
  CHECK(report.corrosion.salt.source == "measured");
  CHECK(report.corrosion.salt.chloride.exact());
}

TEST_CASE("what to treat first begins with the store where mould may grow most") {
  ExposureQuestion question;
  question.storage = {Storage::heated_case, Storage::air_conditioned, Storage::open_shed};
  const ExposureReport report = exposure_report(coast(), question);
  REQUIRE_FALSE(report.treat_first.empty());
  CHECK(report.treat_first.front().find("an open shed") != std::string::npos);
  CHECK(any_holds(report.treat_first, "leather"));
  CHECK(any_holds(report.treat_first, "salt"));
  CHECK(any_holds(report.treat_first, "wettest months"));
}

TEST_CASE("in a desert no surface is named for mould and no month is called wet") {
  const ExposureReport report = exposure_report(exposure::steady_weather(8760, 28, 20));
  CHECK_FALSE(any_holds(report.treat_first, "may be seen"));
  CHECK_FALSE(any_holds(report.treat_first, "wettest months"));
  CHECK_FALSE(report.corrosion.warnings.empty());
}
