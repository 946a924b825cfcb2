#include "core/papers/day_sheet.h"

#include <doctest/doctest.h>

#include "adapters/files/messages.h"
#include "adapters/pdf/pdf.h"
#include "tests/pdf/page_boxes.h"

using namespace dampward;
using namespace dampward::papers;
using namespace dampward::papers::test;

namespace {

const Instant monday(std::chrono::hours(500'227));  // 2027-01-24, 07:00 on the clock below

Instant at(int minutes) {
  return monday + std::chrono::minutes(minutes);
}

// A day with so many rows, two of them coats in a window.
DaySheet sheet_of(int rows, const std::string& name = "spray hand") {
  DaySheet sheet;
  sheet.person = "painter";
  sheet.role = name;
  sheet.shop = "Tamarin Delta river-health service, radio workshop";
  sheet.clock = WallClock(std::chrono::hours(-12));
  sheet.plan = "plan 7C2F   2027-01-25 07:00";
  DaySheet::Day day;
  day.begins = at(0);
  day.ends = at(540);
  day.mask_on = at(100);
  day.mask_off = at(313);
  for (int i = 0; i < rows; ++i) {
    DaySheet::Row row{{"clean", 0, 0},
                      at(20 * i),
                      at(20 * i + 15),
                      "TD-" + std::to_string(300 + i),
                      "river-launch radio",
                      "wash table",
                      {},
                      {}};
    if (i == 0) row.hazards = {"H20", "H22", "H49", "H50"};
    if (i == 1) {
      row.key = {};
      row.pot = "M1";
      row.mix = 1.231 * litre;
      row.hazards = {"H30"};
    }
    if (i > 1 && i < 4) {
      row.key = {"coat", i - 1, 2};
      row.masked = true;
      row.hazards = i == 2 ? std::vector<std::string>{"H32", "H33", "H34", "H35", "H37", "H38", "H39", "H40"}
                           : std::vector<std::string>{};
      row.window = DaySheet::Window{at(31), at(151), at(97)};
      row.others = {"radio technician", "bench assistant"};
    }
    day.rows.push_back(std::move(row));
  }
  day.gaps = {{at(95), at(110), DaySheet::Gap::Kind::meal},
              {at(20 * rows), at(20 * rows + 45), DaySheet::Gap::Kind::call, true}};
  day.air = DaySheet::Air{12.13, 3.4, 50.0, false, true};
  sheet.days = {day, day};
  sheet.days[1].begins = at(1440);
  sheet.days[1].ends = at(1980);
  sheet.days[1].mask_on.reset();
  sheet.days[1].mask_off.reset();
  sheet.days[1].air = DaySheet::Air{0.31, 0.42, std::nullopt, false, false};
  for (DaySheet::Row& row : sheet.days[1].rows) {
    row.starts += std::chrono::hours(24);
    row.ends += std::chrono::hours(24);
    row.masked = false;
    row.window.reset();
  }
  sheet.days[1].gaps.clear();
  return sheet;
}

}  // namespace

TEST_CASE(
    "nothing on a day sheet lies over anything else or off the page, in four languages on both papers") {
  const auto measure = pdf::measure();
  for (const std::string& language : files::sheet_languages()) {
    const Words words = files::sheet_words(language).value();
    for (const Paper& paper : {a4, us_letter}) {
      for (const int rows : {1, 2, 5, 12, 26}) {
        INFO(language << " " << paper.width << " " << rows);
        check_pages(day_sheet(sheet_of(rows), paper, words, *measure), *measure);
      }
      std::string long_name;
      for (int i = 0; i < 20; ++i) long_name += "bench hand";
      for (std::size_t i = 10; i < long_name.size(); i += 11) long_name.insert(i, " ");
      INFO(language << " a long name");
      check_pages(day_sheet(sheet_of(5, long_name), paper, words, *measure), *measure);
    }
  }
}

TEST_CASE("a day sheet says when, where, until when a coat may begin, and every caution of the day once") {
  const auto measure = pdf::measure();
  for (const std::string& language : files::sheet_languages()) {
    const Words words = files::sheet_words(language).value();
    DaySheet sheet = sheet_of(6);
    sheet.days.pop_back();
    const std::string all = words_of(day_sheet(sheet, a4, words, *measure));
    for (const char* said : {"07:00", "16:00", "08:40", "12:13", "09:31", "08:37", "TD-303", "wash table",
                             "M1", "1.24", "radio technician", "12.2", "0.25", "0.75"})
      CHECK_MESSAGE(all.find(said) != std::string::npos, language << " " << said);
    for (const char* id :
         {"H20", "H22", "H49", "H50", "H30", "H32", "H33", "H34", "H35", "H37", "H38", "H39", "H40"}) {
      const std::string caution = words("caution_" + std::string(id));
      const std::size_t first = all.find(caution);
      CHECK_MESSAGE(first != std::string::npos, language << " " << id);
      CHECK(all.find(caution, first + 1) == std::string::npos);
    }
  }
}

TEST_CASE("a day whose vapour nobody can reckon is told as too much, never as none") {
  const auto measure = pdf::measure();
  const Words words = files::sheet_words("en").value();
  DaySheet sheet = sheet_of(3);
  sheet.days[0].air = DaySheet::Air{std::nullopt, 0.2, 1000.0, true, true};
  sheet.days[1].air.reset();
  const std::string all = words_of(day_sheet(sheet, a4, words, *measure));
  CHECK(all.find("treat it as too much. On the face: full-face mask with supplied air") != std::string::npos);
  CHECK(all.find("no mask is needed") == std::string::npos);
}
