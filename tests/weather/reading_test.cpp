#include <doctest/doctest.h>

#include <algorithm>

#include "adapters/files/weather.h"
#include "core/moist_air/humid_air.h"
#include "tests/weather/weather_text.h"

using namespace dampward;
using namespace dampward::files;

namespace {

exposure::Weather read(const std::string& text) {
  const auto weather = parse_weather(text, "year");
  if (!weather) FAIL(to_text(weather.problems().front()));
  return *weather;
}

std::string with_line_ends(std::string text, const std::string& end) {
  std::string out;
  for (const char c : text) {
    if (c == '\n')
      out += end;
    else
      out += c;
  }
  return out;
}

}  // namespace

TEST_CASE("the three kinds of file are known by what stands in them and tell the same weather") {
  const auto rows = made_year();
  const exposure::Weather a = read(epw(rows)), b = read(tmy3(rows)), c = read(nsrdb(rows));
  CHECK(a.kind == "EPW");
  CHECK(b.kind == "TMY3 CSV");
  CHECK(c.kind == "NSRDB CSV");
  CHECK(a.station == "Tamarin Delta");
  CHECK(b.station == "TAMARIN DELTA, WEST");
  for (const auto* weather : {&a, &b, &c}) {
    CHECK(weather->hours.size() == 8760);
    CHECK(weather->latitude == doctest::Approx(-18.5));
    CHECK(weather->longitude == doctest::Approx(36.2));
    CHECK(weather->elevation->in(metre) == doctest::Approx(12));
    CHECK(weather->ahead_of_utc == std::chrono::minutes(120));
    CHECK(weather->hours.front().hour_of_day == 0);
    CHECK(weather->hours.back().hour_of_day == 23);
    CHECK(weather->hours.back().month == 12);
    CHECK(weather->hours[31 * 24].month == 2);
    CHECK(weather->hours[5].temperature.celsius() == doctest::Approx(25));
    CHECK(weather->hours[5].pressure.in(hectopascal) == doctest::Approx(1013));
    CHECK(weather->filled_hours == 0);
    CHECK(weather->gaps.empty());
  }
  CHECK(a.hours[5].humidity.percent() == doctest::Approx(74));
}

TEST_CASE("NSRDB humidity comes from the dew point") {
  const exposure::Weather weather = read(nsrdb(made_year()));
  const auto air =
      moist_air::from_dew_point(Temperature::celsius(25), Temperature::celsius(20), 101300 * pascal);
  CHECK(weather.hours[0].humidity.percent() == doctest::Approx(air.humidity.percent()));
}

TEST_CASE("line ends, a byte-order mark, blank last lines and a missing last end change nothing") {
  const std::string plain = epw(made_year());
  for (const std::string& text : {with_line_ends(plain, "\r\n"), with_line_ends(plain, "\r"), plain + "\n\n",
                                  plain.substr(0, plain.size() - 1)}) {
    const exposure::Weather weather = read(text);
    CHECK(weather.hours.size() == 8760);
    CHECK(weather.station == "Tamarin Delta");
  }
  CHECK(read(with_line_ends(tmy3(made_year()), "\r\n")).hours.size() == 8760);
}

TEST_CASE("a leap year has 8784 hours and a typical year from leap years has 8760") {
  CHECK(read(epw(made_year(1988))).hours.size() == 8784);
  auto rows = made_year(1988);
  std::erase_if(rows, [](const MadeRow& row) { return row.month == 2 && row.day == 29; });
  const exposure::Weather weather = read(epw(rows));
  CHECK(weather.hours.size() == 8760);
  CHECK(weather.gaps.empty());
}

TEST_CASE("months from different years follow each other without a gap") {
  auto rows = made_year();
  for (MadeRow& row : rows) row.year = row.month % 2 == 0 ? 1996 : 2003 - row.month;
  CHECK(read(epw(rows)).hours.size() == 8760);
  CHECK(read(epw(rows)).filled_hours == 0);
}

TEST_CASE("humidity above 100 and up to 105 % is clamped and counted") {
  auto rows = made_year();
  rows[10].humidity = "100";
  rows[11].humidity = "101";
  rows[12].humidity = "105";
  const exposure::Weather weather = read(epw(rows));
  CHECK(weather.clamped_hours == 2);
  CHECK(weather.hours[12].humidity.percent() == doctest::Approx(100));
}

TEST_CASE("a dew point above the air temperature is counted and taken as the air temperature") {
  auto rows = made_year();
  rows[3].dew_point = "25.1";
  rows[4].dew_point = "25.0";
  const exposure::Weather weather = read(epw(rows));
  CHECK(weather.dew_above_dry_hours == 1);
  CHECK(weather.hours[3].dew_point.celsius() == doctest::Approx(25));
  CHECK(read(nsrdb(rows)).hours[3].humidity.percent() == doctest::Approx(100));
}

TEST_CASE("six hours of fillers are drawn straight between their neighbours and counted") {
  auto rows = made_year();
  for (int i = 100; i < 106; ++i) rows[i].temperature = "99.9";
  rows[99].temperature = "20";
  rows[106].temperature = "27";
  const exposure::Weather weather = read(epw(rows));
  CHECK(weather.filled_hours == 6);
  CHECK(weather.gaps.empty());
  CHECK(weather.hours.size() == 8760);
  for (int i = 100; i < 106; ++i)
    CHECK(weather.hours[i].temperature.celsius() == doctest::Approx(20 + (i - 99)));
}

TEST_CASE("seven hours of fillers are left out and listed") {
  auto rows = made_year();
  for (int i = 100; i < 107; ++i) rows[i].humidity = "999";
  const exposure::Weather weather = read(epw(rows));
  CHECK(weather.filled_hours == 0);
  CHECK(weather.hours.size() == 8753);
  REQUIRE(weather.gaps.size() == 1);
  CHECK(weather.gaps[0].hours == 7);
  const WallClock clock(weather.ahead_of_utc);
  CHECK(iso_text(clock.instant(weather.gaps[0].from), clock) == "1987-01-05T04:00:00+02:00");
  CHECK(iso_text(clock.instant(weather.gaps[0].to), clock) == "1987-01-05T11:00:00+02:00");
}

TEST_CASE("the fillers of each kind are known") {
  const auto filled = [](auto change, auto write) {
    auto rows = made_year();
    change(rows[50]);
    return read(write(rows)).filled_hours;
  };
  const auto as_epw = [](const auto& rows) { return epw(rows); };
  const auto as_tmy3 = [](const auto& rows) { return tmy3(rows); };
  const auto as_nsrdb = [](const auto& rows) { return nsrdb(rows); };
  for (const char* filler : {"99.9", "9999", "", "NA"}) {
    CAPTURE(filler);
    CHECK(filled([&](MadeRow& row) { row.temperature = filler; }, as_epw) == 1);
    CHECK(filled([&](MadeRow& row) { row.dew_point = filler; }, as_epw) == 1);
  }
  CHECK(filled([](MadeRow& row) { row.humidity = "999"; }, as_epw) == 1);
  CHECK(filled([](MadeRow& row) { row.temperature = "-9900"; }, as_tmy3) == 1);
  CHECK(filled([](MadeRow& row) { row.humidity = "-9900"; }, as_tmy3) == 1);
  CHECK(filled([](MadeRow& row) { row.dew_point = "-9999"; }, as_nsrdb) == 1);
  // Humidity of 99.9 % is a reading.
  CHECK(filled([](MadeRow& row) { row.humidity = "99.9"; }, as_epw) == 0);
  // No figure rests on the pressure: the standard one stands in, uncounted.
  CHECK(filled([](MadeRow& row) { row.pressure = "999999"; }, as_epw) == 0);
}

TEST_CASE("absent rows are filled up to six hours and listed beyond") {
  auto rows = made_year();
  rows.erase(rows.begin() + 2000, rows.begin() + 2030);
  rows.erase(rows.begin() + 200, rows.begin() + 204);
  const exposure::Weather weather = read(epw(rows));
  CHECK(weather.filled_hours == 4);
  REQUIRE(weather.gaps.size() == 1);
  CHECK(weather.gaps[0].hours == 30);
  CHECK(weather.hours.size() == 8760 - 30);
}

TEST_CASE("fillers at the first and the last hour take the nearest reading") {
  auto rows = made_year();
  rows.front().temperature = "99.9";
  rows[1].temperature = "21";
  rows.back().temperature = "99.9";
  const exposure::Weather weather = read(epw(rows));
  CHECK(weather.filled_hours == 2);
  CHECK(weather.hours.front().temperature.celsius() == doctest::Approx(21));
  CHECK(weather.hours.back().temperature.celsius() == doctest::Approx(25));
}

TEST_CASE("a file that stamps its hours in UTC is shifted to the place's clock") {
  std::string text = nsrdb(made_year());
  text.replace(text.find("36.2,2,12,2"), 11, "36.2,0,12,2");
  const exposure::Weather weather = read(text);
  CHECK(weather.ahead_of_utc == std::chrono::minutes(120));
  CHECK(weather.hours.front().hour_of_day == 2);
}

TEST_CASE("a record over part of a year is right when its head says so") {
  auto rows = made_year();
  rows.resize(90 * 24);
  std::string head = epw_head;
  head.replace(head.find("12/31"), 5, " 3/31");
  CHECK(read(epw(rows, head)).hours.size() == 90 * 24);
}
