#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <filesystem>
#include <fstream>

#include "adapters/files/weather.h"
#include "tests/weather/weather_text.h"

using namespace dampward;
using namespace dampward::files;

namespace {

Problems faults(const std::string& text) {
  const auto weather = parse_weather(text, "site.epw");
  if (weather) return {};
  return weather.problems();
}

// The text of the first fault; empty where there is none.
std::string complaint(const std::string& text) {
  const Problems problems = faults(text);
  return problems.empty() ? "" : to_text(problems.front());
}

bool holds(const std::string& text, const std::string& piece) {
  return text.find(piece) != std::string::npos;
}

}  // namespace

TEST_CASE("humidity above 105 % is refused with its line and column") {
  auto rows = made_year();
  rows[30].humidity = "106";
  const Problems problems = faults(epw(rows));
  REQUIRE(problems.size() == 1);
  CHECK(problems[0].place.line == 39);
  CHECK(problems[0].place.column == 35);
  CHECK(holds(problems[0].found, "humidity \"106\""));
}

TEST_CASE("a file cut short in the middle of a row says so") {
  const std::string text = epw(made_year());
  const std::string said = complaint(text.substr(0, text.size() / 2));
  CHECK(holds(said, "fields"));
  CHECK(holds(said, "cut short"));
}

TEST_CASE("a file cut short at the end of a row says so") {
  auto rows = made_year();
  rows.resize(5000);
  for (const std::string& text : {epw(rows), tmy3(rows), nsrdb(rows)}) {
    CHECK(holds(complaint(text), "fetch it anew"));
  }
}

TEST_CASE("a file cut short in its head says so") {
  const std::string head = epw_head;
  CHECK(holds(complaint(head.substr(0, head.find("COMMENTS"))), "cut short"));
  CHECK(holds(complaint(head), "cut short"));
  CHECK(holds(complaint("LOCATION,Tamarin Delta,-\n"), "cut short"));
  CHECK(holds(complaint(tmy3({})), "cut short"));
  CHECK(holds(complaint(nsrdb({})), "cut short"));
  CHECK(holds(complaint("Source,Location ID,City\n"), "cut short"));
}

TEST_CASE("rows of another length than the rest are named, all at once up to twenty") {
  std::string text = epw(made_year());
  for (int i = 0; i < 30; ++i) text.insert(text.find("0,?9", text.size() / 2 + 3000 * i), ",");
  const Problems problems = faults(text);
  REQUIRE(problems.size() == 21);
  CHECK(holds(problems[0].found, "36 fields"));
  CHECK(holds(problems[0].expected, "35 fields"));
  CHECK(holds(problems[20].found, "and 10 more"));
}

TEST_CASE("an empty file, a blank file and a file of another kind are told apart") {
  CHECK(holds(complaint(""), "empty"));
  CHECK(holds(complaint("\n \n\n"), "empty"));
  CHECK(holds(complaint("serial,kind\nTD-1,radio\n"), "no weather file"));
  CHECK(holds(complaint("<!DOCTYPE html><html></html>"), "LOCATION"));
}

TEST_CASE("a missing file, a folder and a file that is no text are faults with the name as given") {
  namespace fs = std::filesystem;
  const fs::path folder = fs::temp_directory_path() / "dampward_weather_test";
  fs::create_directories(folder);
  {
    std::ofstream packed(folder / "packed.epw", std::ios::binary);
    packed.write("\x1f\x8b\x08\x00\x00", 5);
  }
  for (const char* file : {"none.epw", "packed.epw", "."}) {
    const auto weather = read_weather(folder / file, "weather.epw");
    REQUIRE_FALSE(weather.ok());
    CHECK(weather.problems()[0].place.file == "weather.epw");
  }
  fs::remove_all(folder);
}

TEST_CASE("numbers that are none, cannot be, or are of another unit are refused") {
  const auto said = [](auto change) {
    auto rows = made_year();
    change(rows[0]);
    return complaint(epw(rows));
  };
  CHECK(holds(said([](MadeRow& row) { row.temperature = "warm"; }), "temperature \"warm\""));
  CHECK(holds(said([](MadeRow& row) { row.temperature = "1e300"; }), "temperature"));
  CHECK(holds(said([](MadeRow& row) { row.temperature = "298.1"; }), "temperature"));
  CHECK(holds(said([](MadeRow& row) { row.humidity = "-5"; }), "humidity"));
  CHECK(holds(said([](MadeRow& row) { row.humidity = "inf"; }), "humidity"));
  CHECK(holds(said([](MadeRow& row) { row.pressure = "29.92"; }), "pressure"));
  CHECK(holds(said([](MadeRow& row) { row.month = 13; }), "month"));
  CHECK(holds(said([](MadeRow& row) { row.hour = 0; }), "hour"));
  CHECK(holds(said([](MadeRow& row) { row.month = 2, row.day = 30; }), "day 30 of month 2"));
  CHECK(holds(complaint(nsrdb(made_year(), "f")), "SI units"));
}

TEST_CASE("hours twice or out of order are refused") {
  auto twice = made_year();
  twice.insert(twice.begin() + 500, twice[500]);
  CHECK(holds(complaint(epw(twice)), "a second time"));
  auto back = made_year();
  std::swap(back[700], back[720]);
  CHECK(holds(complaint(epw(back)), "after"));
}

TEST_CASE("a file of nothing but fillers is refused") {
  auto rows = made_year();
  for (MadeRow& row : rows) row.humidity = "999";
  CHECK(holds(complaint(epw(rows)), "fillers"));
}

TEST_CASE("columns the heads lack are named") {
  std::string text = tmy3(made_year());
  text.replace(text.find("RHum (%)"), 8, "Humidity");
  CHECK(holds(complaint(text), "RHum (%)"));
}

TEST_CASE("no text, however damaged, does more than complain") {
  const std::string whole = epw(made_year()), other = tmy3(made_year()), third = nsrdb(made_year());
  CHECK(rc::check([&] {
    std::string text = *rc::gen::element(whole, other, third);
    const auto changes = *rc::gen::container<std::vector<std::pair<int, char>>>(
        rc::gen::pair(rc::gen::inRange(0, 4000), rc::gen::arbitrary<char>()));
    for (const auto& [place, letter] : changes) text[static_cast<std::size_t>(place)] = letter;
    text.resize(static_cast<std::size_t>(*rc::gen::inRange(0, static_cast<int>(text.size()))));
    const auto weather = parse_weather(text, "damaged");
    RC_ASSERT(weather.ok() || !weather.problems().empty());
  }));
}
