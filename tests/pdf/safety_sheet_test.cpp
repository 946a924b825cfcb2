#include "core/papers/safety_sheet.h"

#include <doctest/doctest.h>

#include "adapters/files/messages.h"
#include "adapters/pdf/pdf.h"
#include "tests/pdf/page_boxes.h"

using namespace dampward;
using namespace dampward::papers;
using namespace dampward::papers::test;

namespace {

const Instant morning(std::chrono::hours(500'227));

Instant at(int minutes) {
  return morning + std::chrono::minutes(minutes);
}

SafetySheet sheet_of(int people, int days, const std::string& name) {
  SafetySheet sheet;
  sheet.place = name;
  sheet.shop = "Tamarin Delta river-health service, radio workshop";
  for (int i = 0; i < days; ++i)
    sheet.stretches.push_back({at(1440 * i), at(1440 * i + 180), at(1440 * i + 185), at(1440 * i + 200)});
  sheet.allowed = 0.1;
  sheet.peak = 0.07991;
  sheet.near = 0.1367;
  sheet.people = 0.0091;
  for (int i = 0; i < 18; ++i) sheet.curve.push_back({at(10 * i), i % 3 * 0.03 + 0.001});
  sheet.purge = 4.2 * minute;
  sheet.fan = 45 * cubic_metre_per_minute;
  sheet.fan_fire = 36.41 * cubic_metre_per_minute;
  sheet.fan_people = 1604.1 * cubic_metre_per_minute;
  for (int i = 0; i < people; ++i)
    sheet.crew.push_back({name, morning, 9.99, 12.17, at(100), VapourShare::ppm(1388.2),
                          VapourShare::ppm(1484.9), SafetySheet::Mask::full, 50});
  sheet.length = 4 * metre;
  sheet.width = 3.5 * metre;
  sheet.ways_out = 2;
  sheet.hot = {"lamp oven"};
  sheet.cautions = {{"all", {"H49", "H50"}},
                    {"mix", {"H30"}},
                    {"coat", {"H32", "H33", "H34", "H35", "H37", "H38", "H39", "H40"}},
                    {"flash", {"H41", "H42"}},
                    {"airing", {"H45"}},
                    {"store", {"H46"}},
                    {"waste", {"H47"}}};
  sheet.plan = "plan 7C2F   2027-02-01 07:00";
  return sheet;
}

}  // namespace

TEST_CASE(
    "nothing on a safety sheet lies over anything else or off the page, in four languages on both papers") {
  const auto measure = pdf::measure();
  for (const std::string& language : files::sheet_languages()) {
    const Words words = files::sheet_words(language).value();
    for (const Paper& paper : {a4, us_letter}) {
      for (const int many : {1, 4, 12}) {
        INFO(language << " " << paper.width << " " << many);
        check_pages(safety_sheet(sheet_of(many, many, "spray room"), paper, words, *measure), *measure);
        check_pages(
            safety_sheet(sheet_of(many, 1, "spray room behind the old pump house"), paper, words, *measure),
            *measure);
      }
    }
  }
}

TEST_CASE("a safety sheet says every limit, every mask, the ways out and every caution") {
  const auto measure = pdf::measure();
  for (const std::string& language : files::sheet_languages()) {
    const Words words = files::sheet_words(language).value();
    const SafetySheet sheet = sheet_of(2, 2, "spray room");
    const std::string all = words_of(safety_sheet(sheet, a4, words, *measure));
    for (const auto& group : sheet.cautions) {
      for (const std::string& hazard : group.hazards)
        CHECK(all.find(words("caution_" + hazard)) != std::string::npos);
    }
    // Values up, limits and spares down.
    for (const char* said : {"8\u202f%", "2\u202f%", "10\u202f%", "45\u202fm³/min", "36.5\u202fm³/min",
                             "12.2", "37.8", "50\u202f", "1389\u202fppm", "1484\u202fppm", "13.7\u202f%",
                             "5\u202fmin", "0.91\u202f%", "lamp oven", "6.1\u202fm"})
      CHECK_MESSAGE(all.find(said) != std::string::npos, said);
    for (const char* key : {"safety_mask_full", "safety_codes", "safety_tick_out"})
      CHECK(all.find(words(key)) != std::string::npos);
    for (const char* number : {"1", "2"})
      CHECK(all.find(words("safety_door", {number})) != std::string::npos);
  }
}

TEST_CASE("what is not known is never drawn as safe, and what is passed is told as such") {
  const auto measure = pdf::measure();
  const Words words = files::sheet_words("en").value();
  SafetySheet sheet = sheet_of(1, 1, "spray room");
  sheet.people.reset();
  sheet.purge.reset();
  sheet.fan_people.reset();
  sheet.near.reset();
  sheet.crew.front().average.reset();
  sheet.ways_out = 1;
  std::string all = words_of(safety_sheet(sheet, a4, words, *measure));
  for (const char* key :
       {"safety_no_people_wall", "safety_no_purge", "safety_gun_unknown", "safety_unknown", "safety_one_way"})
    CHECK_MESSAGE(all.find(words(key)) != std::string::npos, key);
  CHECK(all.find(words("safety_no_air_enough")) != std::string::npos);
  sheet.peak = 0.12;
  sheet.fan = 20 * cubic_metre_per_minute;
  sheet.crew.front() = sheet_of(1, 1, "x").crew.front();
  sheet.crew.front().short_term = 60;
  sheet.crew.front().highest_use.reset();
  all = words_of(safety_sheet(sheet, us_letter, words, *measure));
  CHECK(all.find("room, worst minute: 12\u202f%, allowed 10\u202f%. Do not begin") != std::string::npos);
  CHECK(all.find("fan here: 20\u202fm³/min, needed 36.5\u202fm³/min. Do not begin") != std::string::npos);
  CHECK(all.find("worst air, no mask: 60\u202f×, allowed 50\u202f×") != std::string::npos);
  CHECK(all.find("how far the mask is good is not known") != std::string::npos);
  sheet.peak.reset();
  all = words_of(safety_sheet(sheet, us_letter, words, *measure));
  CHECK(all.find(words("safety_no_curve")) != std::string::npos);
}

TEST_CASE("a place and a crew with names of 200 letters still make pages") {
  const auto measure = pdf::measure();
  const Words words = files::sheet_words("fr").value();
  const Pages pages = safety_sheet(sheet_of(3, 3, std::string(200, 'x')), us_letter, words, *measure);
  CHECK(pdf::pdf_of(pages, {"long", Instant{}}).starts_with("%PDF"));
}
