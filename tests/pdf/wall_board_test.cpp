#include "core/papers/wall_board.h"

#include <doctest/doctest.h>

#include "adapters/files/messages.h"
#include "adapters/pdf/pdf.h"
#include "core/papers/detail/time_axis.h"
#include "tests/pdf/page_boxes.h"

using namespace dampward;
using namespace dampward::papers;
using namespace dampward::papers::test;

namespace {

const Instant monday(std::chrono::hours(500'227));  // 2027-01-24, 07:00 on the clock below

Instant at(int day, int minutes) {
  return monday + std::chrono::minutes(1440 * day + minutes);
}

WallBoard board_of(int units, int days, const std::string& kind = "river-launch radio") {
  WallBoard board;
  board.shop = "Tamarin Delta river-health service, radio workshop";
  board.air = Temperature::celsius(31);
  board.dew_point = Temperature::celsius(26.2);
  board.humidity = RelativeHumidity::percent(86);
  board.clock = WallClock(std::chrono::hours(-12));
  board.plan = "plan 7C2F   2027-01-25 07:00";
  for (int d = 0; d < days; ++d) {
    board.days.push_back({at(d, 0), at(d, 600)});
    board.loads.push_back({"L" + std::to_string(d + 1), at(d, 10), at(d, 310)});
  }
  using Place = WallBoard::Place;
  for (int i = 0; i < units; ++i) {
    const int d = i % days, last = days - 1;
    WallBoard::Unit unit;
    unit.unit = "TD-" + std::to_string(300 + i);
    unit.kind = kind;
    unit.bars = {{Place::bench, at(d, 0), at(d, 55), ""},
                 {i % 2 == 0 ? Place::oven : Place::box, at(d, 60), at(d, 310), i % 2 == 0 ? "L1" : ""},
                 {Place::lacquer, at(d, 312), at(d, 390), ""},
                 {Place::airing, at(d, 400), at(last, 500), ""},
                 {Place::bench, at(last, 501), at(last, 530), ""}};
    unit.steps = {
        {{"test", 0, 0}, at(d, 0)}, {{"coat", 1, 2}, at(d, 312)}, {{"reassemble", 0, 0}, at(last, 501)}};
    unit.coats = {at(d, 312), at(d, 340)};
    unit.opens = at(d, 311);
    unit.shuts = at(d, 430 + i % 7);
    unit.done = at(last, 530);
    unit.due = Date(std::chrono::year(2027), std::chrono::January, std::chrono::day(27));
    unit.late = i == 1;
    board.units.push_back(std::move(unit));
  }
  board.refused = {{"TD-452", kind,
                    "nobody knows what the scale is made of, so nobody knows how hot it may become.",
                    "measure the scale: it may be treated if that stands 45 °C or more"}};
  return board;
}

}  // namespace

TEST_CASE(
    "nothing on a wall board lies over anything else or off the page, in four languages on both papers") {
  const auto measure = pdf::measure();
  for (const std::string& language : files::sheet_languages()) {
    const Words words = files::sheet_words(language).value();
    for (const Paper& paper : {a4, us_letter}) {
      for (const auto& [units, days] : {std::pair(0, 1), {1, 1}, {8, 2}, {14, 6}, {60, 17}}) {
        INFO(language << " " << paper.width << " " << units);
        const Pages pages = wall_board(board_of(units, days), paper, words, *measure);
        check_pages(pages, *measure);
        for (const Page& page : pages) CHECK(page.paper.width > page.paper.height);
      }
      std::string long_name;
      for (int i = 0; i < 20; ++i) long_name += "relay rack ";
      INFO(language << " a long name");
      check_pages(wall_board(board_of(3, 3, long_name), paper, words, *measure), *measure);
    }
  }
}

TEST_CASE(
    "a wall board holds every unit, every window's end, who is late, and refused units with the way in") {
  const auto measure = pdf::measure();
  for (const std::string& language : files::sheet_languages()) {
    const Words words = files::sheet_words(language).value();
    const WallBoard board = board_of(60, 17);
    const std::string all = words_of(wall_board(board, a4, words, *measure));
    for (const WallBoard::Unit& unit : board.units) {
      CHECK(all.find(unit.unit) != std::string::npos);
      const std::string coats =
          clock_of(unit.coats[0], board.clock) + "  " + clock_of(unit.coats[1], board.clock);
      CHECK(all.find(words("board_coats", {coats, clock_of(*unit.shuts, board.clock)})) != std::string::npos);
    }
    CHECK(all.find(words("board_late", {weekday_name(words, at(3, 0), board.clock) + " 01-27"})) !=
          std::string::npos);
    CHECK(all.find(words("board_refused", {board.refused[0].reason})) != std::string::npos);
    CHECK(all.find(words("board_opens", {board.refused[0].opens_with})) != std::string::npos);
    for (const WallBoard::Load& load : board.loads)
      CHECK(all.find(words("board_in", {load.id})) != std::string::npos);
  }
}

TEST_CASE("time on the board never runs backwards, and a night is narrow") {
  const TimeAxis axis({{at(0, 0), at(0, 600)}, {at(1, 0), at(1, 540)}, {at(4, 0), at(4, 600)}}, 68, 241);
  double last = 0;
  for (int minute = -100; minute < 5 * 1440; minute += 7) {
    const double x = axis.at(at(0, minute));
    CHECK(x >= last);
    CHECK(x >= 68);
    CHECK(x <= 241 + 1e-9);
    last = x;
  }
  CHECK(axis.at(at(1, 0)) - axis.at(at(0, 600)) == doctest::Approx(TimeAxis::night));
  CHECK(axis.at(at(4, 600)) == doctest::Approx(241));
}
