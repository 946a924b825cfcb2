#include <doctest/doctest.h>

#include <string>

#include "adapters/files/detail/daily_records.h"
#include "adapters/files/detail/spreadsheet_damage.h"
#include "adapters/files/text_file.h"
#include "core/base/format.h"

using namespace dampward;
using namespace dampward::files;
using namespace dampward::files::detail;

namespace {

const KnownIds known = {{"river_radio", "river_phone"}, {"delta_varnish", "delta_thinner"}};

records::Queue queue_of(std::string_view text, Proof& proof) {
  return read_queue("queue.csv", as_utf8(text), known, proof);
}

// The one fault of a queue with this row.
Problem fault_of_row(const std::string& row) {
  Proof proof;
  (void)queue_of("# start: 2026-11-30 07:00\nserial,kind,findings,soil,due,priority\n" + row + "\n", proof);
  for (const Problem& problem : proof.faults) INFO(to_text(problem));
  REQUIRE(proof.faults.size() == 1);
  return proof.faults.front();
}

bool says(const std::string& text, std::string_view part) {
  return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("a queue is read with its start, findings, soils and dates") {
  Proof proof;
  const auto queue = queue_of(
      "# start: 2026-11-30 07:00\nserial,kind,findings,soil,due,priority,note\n"
      "TD-0107,river_radio,mould/low_insulation,dust + fungus,2026-12-03,2,launch 3\n",
      proof);
  CHECK(proof.faults.empty());
  CHECK(proof.warnings.empty());
  CHECK(queue.starts == parse_local_time("2026-11-30 07:00"));
  REQUIRE(queue.units.size() == 1);
  CHECK(queue.units[0].findings == std::vector<std::string>{"mould", "low_insulation"});
  CHECK(queue.units[0].soils == std::vector<std::string>{"dust", "fungus"});
  CHECK(queue.units[0].due == parse_date("2026-12-03"));
  CHECK(queue.units[0].priority == 2);
  CHECK(queue.units[0].place.line == 3);
}

TEST_CASE("a queue of none and one of 500 are both fine") {
  Proof proof;
  CHECK(queue_of("serial,kind\n", proof).units.empty());
  std::string text = "serial,kind\n";
  for (int i = 0; i < 500; ++i) text += format("TD-{:04},river_radio\n", i);
  CHECK(queue_of(text, proof).units.size() == 500);
  CHECK(proof.faults.empty());
}

TEST_CASE("an unknown kind is named with the one that was meant") {
  const Problem problem = fault_of_row("TD-1,river_radoi,,,,");
  CHECK(problem.next == "Did you mean \"river_radio\"?");
  CHECK(problem.place.line == 3);
  CHECK(problem.place.column == 6);
}

TEST_CASE("a row without serial or kind, with an unknown soil or half a priority is refused") {
  CHECK(fault_of_row(",river_radio,,,,").found == "no serial");
  CHECK(fault_of_row("TD-1,,,,,").found == "no kind");
  CHECK(says(fault_of_row("TD-1,river_radio,,dusst,,").next, "dust"));
  CHECK(says(fault_of_row("TD-1,river_radio,,,,1.5").found, "whole number"));
}

TEST_CASE("a serial that stands twice names the line of the first") {
  Proof proof;
  (void)queue_of("serial,kind\nTD-1,river_radio\nTD-2,river_radio\ntd-1,river_phone\n", proof);
  REQUIRE(proof.faults.size() == 1);
  CHECK(proof.faults[0].place.line == 4);
  CHECK(says(proof.faults[0].expected, "line 2"));
}

TEST_CASE("a serial that a spreadsheet has shortened is lost and must be written again") {
  CHECK(says(fault_of_row("1.2E+05,river_radio,,,,").found, "shortened"));
  Proof proof;
  (void)queue_of("serial;kind\n1,2E+05;river_radio\n", proof);
  CHECK(says(proof.faults.at(0).found, "shortened"));
  CHECK_FALSE(shortened_serial("12E05"));
  CHECK_FALSE(shortened_serial("TE-5"));
}

TEST_CASE("lost leading zeros are suspected from the neighbours and doubted, not refused") {
  Proof proof;
  const auto queue = queue_of("serial,kind\n0041,river_radio\n42,river_radio\n0043,river_radio\n", proof);
  CHECK(proof.faults.empty());
  REQUIRE(queue.doubts.size() == 1);
  CHECK(queue.doubts[0].place.line == 3);
  CHECK(says(queue.doubts[0].expected, "\"0042\""));
  CHECK_FALSE(with_lost_zeros("42", {"41", "42"}).has_value());
  CHECK_FALSE(with_lost_zeros("42", {"TD-0041", "42"}).has_value());
}

TEST_CASE("a date turned round is named with what to write instead") {
  CHECK(says(fault_of_row("TD-1,river_radio,,,25/12/2026,").next, "2026-12-25"));
  CHECK(says(fault_of_row("TD-1,river_radio,,,25.12.26,").next, "2026-12-25"));
  CHECK(says(fault_of_row("TD-1,river_radio,,,2026-25-12,").next, "2026-12-25"));
  CHECK(says(fault_of_row("TD-1,river_radio,,,2026/12/04,").next, "2026-12-04"));
  const Problem either = fault_of_row("TD-1,river_radio,,,04/12/2026,");
  CHECK(says(either.next, "2026-12-04 or 2026-04-12"));
  CHECK(says(fault_of_row("TD-1,river_radio,,,next week,").expected, "2026-12-04"));
}

// Day 46360 of a spreadsheet that counts from 1899-12-30 is 2026-12-04 (own count of days).
TEST_CASE("a spreadsheet's day number is turned back into its date") {
  CHECK(says(fault_of_row("TD-1,river_radio,,,46360,").next, "2026-12-04"));
}

TEST_CASE("a due date before the start that turns into a later one is doubted") {
  Proof proof;
  const auto queue =
      queue_of("# start: 2026-11-30 07:00\nserial,kind,due\nTD-1,river_radio,2026-03-12\n", proof);
  CHECK(proof.faults.empty());
  REQUIRE(queue.doubts.size() == 1);
  CHECK(says(queue.doubts[0].expected, "2026-12-03"));
}

TEST_CASE("a start that is no time is refused at its line") {
  Proof proof;
  (void)queue_of("# start: 30/11/2026 07:00\nserial,kind\n", proof);
  REQUIRE(proof.faults.size() == 1);
  CHECK(proof.faults[0].place.line == 1);
  CHECK(says(proof.faults[0].next, "2026-11-30"));
}

TEST_CASE("a row put aside with # is named, in case it is a serial") {
  Proof proof;
  (void)queue_of("serial,kind\n#12,river_radio\n", proof);
  CHECK(proof.warnings.size() == 1);
}

TEST_CASE("stock keeps lots of liquids, names near misses and leaves out what is no volume") {
  Proof proof;
  const auto lots = read_stock("stock.csv",
                               "lot;item;amount;expires;opened\nV-1;delta_varnish;2,5 L;2027-04-30;\n"
                               "T-1;delta_thinner;1 gal;;2026-10-19\nP-1;masking tape;12 rolls;;\n",
                               known, proof);
  CHECK(proof.faults.empty());
  REQUIRE(lots.size() == 2);
  CHECK(lots[0].amount.in(litre) == doctest::Approx(2.5));
  CHECK(lots[1].amount.in(litre) == doctest::Approx(3.785).epsilon(1e-3));
  CHECK(proof.warnings.size() == 1);
  Proof faulty;
  (void)read_stock("stock.csv", "lot,item,amount\nV-1,delta_varnsh,2 L\nV-1,delta_varnish,2 kg\n", known,
                   faulty);
  CHECK(faulty.faults.size() == 3);  // a near miss, a lot twice, a mass where a volume belongs
}

TEST_CASE("the air is read with units in the cells or in the header") {
  Proof proof;
  const auto in_cells =
      read_air("air.csv", "time,place,temperature,humidity\n2026-11-30 06:40,spray room,81 °F,82 %\n", proof);
  const auto in_header = read_air(
      "air.csv", "time;place;temperature (°C);humidity [%]\n2026-11-30 06:40;spray room;27,2;82\n", proof);
  CHECK(proof.faults.empty());
  REQUIRE(in_cells.size() == 1);
  REQUIRE(in_header.size() == 1);
  CHECK(in_cells[0].temperature.celsius() == doctest::Approx(27.22).epsilon(1e-3));
  CHECK(in_header[0].temperature.celsius() == doctest::Approx(27.2));
  CHECK(in_header[0].humidity.percent() == doctest::Approx(82));
}

TEST_CASE("air without unit or above 100 % is refused in its cell") {
  Proof proof;
  (void)read_air(
      "air.csv",
      "time,place,temperature,humidity\n2026-11-30 06:40,room,27,82 %\n2026-11-30 06:50,room,27 °C,130 %\n",
      proof);
  REQUIRE(proof.faults.size() == 2);
  CHECK(says(proof.faults[0].found, "no unit"));
  CHECK(proof.faults[0].place.column == 23);
  CHECK(proof.faults[1].place.line == 3);
}
