#include "core/papers/oven_sheet.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "adapters/files/messages.h"
#include "adapters/pdf/pdf.h"
#include "tests/pdf/page_boxes.h"

using namespace dampward;
using namespace dampward::papers;
using namespace dampward::papers::test;

namespace {

// A load of some units that warms to 50 °C in an hour and a half and stays there.
OvenSheet sheet_of(int units, const std::string& serial, const std::string& name, Duration hold) {
  OvenSheet sheet;
  sheet.load = "L1";
  sheet.oven = name;
  sheet.shop = "Tamarin Delta river-health service, radio workshop";
  sheet.weakest = "smoothing capacitors";
  sheet.weakest_unit = serial;
  sheet.set = Temperature::celsius(50);
  sheet.peak = Temperature::celsius(55);
  sheet.limit = Temperature::celsius(60);
  sheet.holds_from = Temperature::celsius(45);
  sheet.spread = 5 * kelvin;
  sheet.hold = hold;
  sheet.hold_nominal = 0.5 * hold;
  sheet.rule = 6.8 * hour;
  sheet.in = Instant(std::chrono::hours(450'000)) + std::chrono::minutes(30);
  sheet.hold_starts = sheet.in + std::chrono::minutes(90);
  sheet.hold_ends = sheet.hold_starts + std::chrono::minutes(static_cast<long>(hold.in(minute)));
  for (int i = 0; i < units; ++i)
    sheet.units.push_back(
        {serial + std::to_string(i), name, sheet.hold_ends + std::chrono::minutes(4 * (i + 1))});
  sheet.slowest = TemperatureCurve({{Duration{}, Temperature::celsius(25)},
                                    {40 * minute, Temperature::celsius(40)},
                                    {90 * minute, Temperature::celsius(49)},
                                    {90 * minute + hold, Temperature::celsius(50)}});
  sheet.stays_damp = "winding of the mains transformer, coil formers and tag strips";
  sheet.plan = "plan 7C2F   2027-02-01 07:00";
  return sheet;
}

}  // namespace

TEST_CASE(
    "nothing on an oven sheet lies over anything else or off the page, in four languages on both papers") {
  const auto measure = pdf::measure();
  for (const std::string& language : files::sheet_languages()) {
    const Words words = files::sheet_words(language).value();
    for (const Paper& paper : {a4, us_letter}) {
      for (const int units : {1, 3, 6}) {
        for (const double hours : {0.5, 2.3, 4.6, 9.0}) {
          INFO(language << " " << paper.width << " " << units << " " << hours);
          check_page(
              oven_sheet(sheet_of(units, "TD-021", "heater cabinet", hours * hour), paper, words, *measure),
              *measure);
        }
      }
    }
  }
}

TEST_CASE("long names and serials are set smaller or below, never cut and never over anything") {
  const auto measure = pdf::measure();
  const Words words = files::sheet_words("fr").value();
  const std::string serial = "TD-2027-0204-WITH-A-LONG-SERIAL-";
  const std::string name =
      "heater cabinet built of two flat-packed steel lockers, a fan and a great deal of patience";
  const Page page = oven_sheet(sheet_of(4, serial, name, 3 * hour), us_letter, words, *measure);
  check_page(page, *measure);
  std::string all;
  for (const Box& box : boxes_of(page, *measure)) all += box.text + "\n";
  for (int i = 0; i < 4; ++i) CHECK(all.find(serial + std::to_string(i)) != std::string::npos);
}

TEST_CASE("a name of 200 letters, emoji and right-to-left script still make a page") {
  const auto measure = pdf::measure();
  const Words words = files::sheet_words("en").value();
  const std::string name = "\u0645\u0630\u064a\u0627\u0639 \U0001F4FB " + std::string(200, 'x');
  const Page page = oven_sheet(sheet_of(2, "TD-1", name, 2 * hour), a4, words, *measure);
  const std::string bytes = pdf::pdf_of({page}, {"long", Instant{}});
  CHECK(bytes.starts_with("%PDF"));
}

TEST_CASE("the sheet says the set point, the triple of the limit, the hold and what never goes in") {
  const auto measure = pdf::measure();
  const Words words = files::sheet_words("en").value();
  std::string all;
  for (const Box& box :
       boxes_of(oven_sheet(sheet_of(2, "TD-1", "cabinet", 2 * hour), a4, words, *measure), *measure))
    all += box.text + "\n";
  for (const char* said : {"50\u202f°C", "55\u202f°C", "60\u202f°C", "5\u202fK", "Nothing wet with lacquer",
                           "It does not kill spores", "45\u202f°C", "2\u202fh", "TD-10", "TD-11", "Over 55"})
    CHECK_MESSAGE(all.find(said) != std::string::npos, said);
}

TEST_CASE("no reading is expected above the hottest the part may become, nor is a hold rounded down") {
  const auto measure = pdf::measure();
  const Words words = files::sheet_words("en").value();
  OvenSheet sheet = sheet_of(1, "TD-1", "cabinet", 2 * hour);
  sheet.hold = 2 * hour + 10 * second;
  sheet.peak = Temperature::celsius(50.4);
  sheet.limit = Temperature::celsius(55.9);
  std::string all;
  for (const Box& box : boxes_of(oven_sheet(sheet, a4, words, *measure), *measure)) all += box.text + "\n";
  CHECK(all.find("2\u202fh\u202f01\u202fmin") != std::string::npos);
  CHECK(all.find("51\u202f°C") != std::string::npos);  // the peak, up
  CHECK(all.find("55\u202f°C") != std::string::npos);  // the limit, down
  CHECK(all.find("5\u202fK") != std::string::npos);
  CHECK(all.find("to 50\u202f°C") != std::string::npos);
}

TEST_CASE("every sentence stands in every language, and the same pages give the same bytes") {
  for (const std::string& language : files::sheet_languages()) {
    const auto words = files::sheet_words(language);
    REQUIRE(words.ok());
    CHECK(words->checked() == (language == "en"));
  }
  CHECK_FALSE(files::sheet_words("xx").ok());
  const auto measure = pdf::measure();
  const Words words = files::sheet_words("en").value();
  const auto draw = [&] {
    return pdf::pdf_of({oven_sheet(sheet_of(2, "TD-1", "cabinet", 2 * hour), a4, words, *measure)},
                       {"a", Instant{}});
  };
  CHECK(draw() == draw());
}
