#include "adapters/files/week_hours.h"

#include <doctest/doctest.h>

#include <string>
#include <vector>

#include "adapters/files/time_zone.h"

using namespace dampward;
using namespace dampward::files;
using namespace std::chrono;

namespace {

std::string told(const std::vector<std::string>& lines) {
  const auto hours = week_hours_from_text(lines);
  REQUIRE_FALSE(hours.ok());
  return hours.problems().front().found + " " + hours.problems().front().next;
}

bool says(const std::string& text, std::string_view part) {
  return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("hours of the week are read as a person writes them") {
  const auto hours =
      week_hours_from_text(std::vector<std::string>{"Mon-Fri 07:00-15:30", "sat,sun 08:00–12:00"});
  REQUIRE(hours.ok());
  CHECK(hours->days.size() == 7);
  CHECK(hours->days.at(1).at(0).from == 7h);
  CHECK(hours->days.at(0).at(0).to == 12h);
  CHECK(week_hours_from_text(std::vector<std::string>{"always"})->days.at(3).at(0).to == 24h);
  CHECK(week_hours_from_text(std::vector<std::string>{"sat-mon 08:00-12:00"})->days.size() == 3);
}

TEST_CASE("two stretches of one day stand in order, overlapping ones are refused") {
  const auto hours = week_hours_from_text(std::vector<std::string>{"mon 13:00-17:00", "mon 07:00-12:00"});
  REQUIRE(hours.ok());
  CHECK(hours->days.at(1).at(0).from == 7h);
  CHECK(says(told({"mon-fri 07:00-15:00", "fri 14:00-18:00"}), "overlaps"));
}

TEST_CASE("a shift that ends before it begins is told how hours over midnight are written") {
  CHECK(says(told({"mon 22:00-06:00"}), "24:00"));
  CHECK(says(told({"mon 08:00-08:00"}), "ends before it begins"));
}

TEST_CASE("unknown days and times are named") {
  CHECK(says(told({"mom 08:00-12:00"}), "Did you mean \"mon\"?"));
  CHECK(says(told({"mon 8-12"}), "without two times of day"));
  CHECK(says(told({"monday"}), "monday"));
}

// IANA time-zone database as installed: Maputo keeps UTC+2 all year; Berlin moves its clocks on the last Sundays of March and October.
TEST_CASE("a time zone gives the wall clock of its place") {
  const auto maputo = wall_clock_of("Africa/Maputo");
  REQUIRE(maputo.ok());
  CHECK(maputo->offset_at(parse_instant("2026-07-01T00:00Z").value()) == 2h);
  const auto berlin = wall_clock_of("Europe/Berlin");
  REQUIRE(berlin.ok());
  CHECK(berlin->offset_at(parse_instant("2026-10-25T00:59Z").value()) == 2h);
  CHECK(berlin->offset_at(parse_instant("2026-10-25T01:00Z").value()) == 1h);
}

TEST_CASE("an unknown time zone is named with the one that was meant") {
  CHECK(wall_clock_of("Africa/Mapputo").problems()[0].next == "Did you mean \"Africa/Maputo\"?");
  CHECK(says(wall_clock_of("Asia/Maputo").problems()[0].next, "Africa/Maputo"));
  CHECK_FALSE(wall_clock_of("").ok());
}
