#include "adapters/files/csv.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <string>
#include <vector>

#include "adapters/files/text_file.h"

using namespace dampward;
using namespace dampward::files;

namespace {

const std::vector<std::string> queue_required = {"serial", "kind"};
const std::vector<std::string> queue_optional = {"due", "note"};

CsvSheet sheet_of(std::string_view text) {
  const auto sheet = read_csv("queue.csv", as_utf8(text));
  REQUIRE(sheet.ok());
  return *sheet;
}

std::vector<std::vector<std::string>> texts(const CsvSheet& sheet) {
  std::vector<std::vector<std::string>> rows;
  for (const CsvRow& row : sheet.rows) {
    rows.emplace_back();
    for (const CsvCell& cell : row) rows.back().push_back(cell.text);
  }
  return rows;
}

}  // namespace

TEST_CASE("comma, semicolon and tab say the same") {
  const auto comma = texts(sheet_of("serial,kind\nTD-0107,river_radio\n"));
  CHECK(comma == std::vector<std::vector<std::string>>{{"TD-0107", "river_radio"}});
  CHECK(texts(sheet_of("serial;kind\nTD-0107;river_radio\n")) == comma);
  CHECK(texts(sheet_of("serial\tkind\nTD-0107\triver_radio\n")) == comma);
  CHECK(texts(sheet_of("sep=;\nserial;kind\nTD-0107;river_radio\n")) == comma);
}

TEST_CASE("line ends of every system and a byte-order mark say the same") {
  const auto unix_rows = texts(sheet_of("serial,kind\na,b\nc,d\n"));
  CHECK(texts(sheet_of("serial,kind\r\na,b\r\nc,d\r\n")) == unix_rows);
  CHECK(texts(sheet_of("serial,kind\ra,b\rc,d\r")) == unix_rows);
  CHECK(texts(sheet_of("serial,kind\na,b\nc,d")) == unix_rows);
  CHECK(texts(sheet_of("\xEF\xBB\xBFserial,kind\r\na,b\r\nc,d\r\n")) == unix_rows);
}

TEST_CASE("the encodings of spreadsheets say the same") {
  const auto rows = texts(sheet_of("place,temperature\nKüche,27 °C\n"));
  CHECK(texts(sheet_of("place,temperature\nK\xFC"
                       "che,27 \xB0"
                       "C\n")) == rows);
  std::string wide = "\xFF\xFE";
  for (char16_t c : std::u16string(u"place,temperature\nKüche,27 °C\n")) {
    wide += static_cast<char>(c & 0xFF);
    wide += static_cast<char>(c >> 8);
  }
  CHECK(texts(sheet_of(wide)) == rows);
}

TEST_CASE("a quoted cell may hold separators, quotes and line ends") {
  const CsvSheet sheet = sheet_of("serial,note\nTD-1,\"dust, \"\"much\"\" of it\nand damp\"\nTD-2,dry\n");
  CHECK(sheet.rows[0][1].text == "dust, \"much\" of it\nand damp");
  CHECK(sheet.rows[1][0].line == 4);
}

TEST_CASE("every cell knows its line and its column in letters") {
  const CsvSheet sheet = sheet_of("serial,note,due\nTD-1,Küche, 2026-12-03\n");
  CHECK(sheet.rows[0][1].line == 2);
  CHECK(sheet.rows[0][1].column == 6);
  CHECK(sheet.rows[0][2].column == 13);
}

TEST_CASE("comments, also padded by a spreadsheet, and empty rows are no data") {
  const CsvSheet sheet =
      sheet_of("# start: 2026-11-30 07:00;;;\n;;;\nserial;kind;due;note\n;;;\nTD-1;a;;\n# later\n");
  REQUIRE(sheet.comments.size() == 2);
  CHECK(sheet.comments[0].text == "start: 2026-11-30 07:00");
  CHECK(sheet.rows.size() == 1);
}

TEST_CASE("a sheet that writes 12,5 is known by it") {
  CHECK(sheet_of("lot;amount\nV-1;2,5 L\n").decimal_comma);
  CHECK_FALSE(sheet_of("lot;amount\nV-1;2.5 L\n").decimal_comma);
}

TEST_CASE("headers match whatever their case, blanks or underscores, and may carry a unit") {
  Proof proof;
  const CsvSheet sheet = sheet_of("Serial, KIND ,Due (date)\nTD-1,a,x\n");
  const CsvColumns columns(sheet, queue_required, queue_optional, proof);
  CHECK(proof.faults.empty());
  CHECK(columns.cell(sheet.rows[0], "kind").text == "a");
  CHECK(columns.unit("due") == "date");
  CHECK_FALSE(columns.has("note"));
  CHECK(columns.cell(sheet.rows[0], "note").text.empty());
}

TEST_CASE("a misspelt column is a fault, a foreign one a warning") {
  Proof proof;
  const CsvSheet sheet = sheet_of("serail,kind,colour\nTD-1,a,green\n");
  const CsvColumns columns(sheet, queue_required, queue_optional, proof);
  REQUIRE(proof.faults.size() == 1);
  CHECK(proof.faults[0].next == "Did you mean \"serial\"?");
  CHECK(proof.faults[0].place.line == 1);
  REQUIRE(proof.warnings.size() == 1);
  CHECK(proof.warnings[0].found.find("colour") != std::string::npos);
}

TEST_CASE("missing and doubled columns are named") {
  Proof proof;
  const CsvSheet sheet = sheet_of("kind,kind\na,b\n");
  const CsvColumns columns(sheet, queue_required, queue_optional, proof);
  CHECK(proof.faults.size() == 2);
}

TEST_CASE("a row longer than the header is a fault at the first cell too many") {
  Proof proof;
  check_row_lengths(sheet_of("serial,note\nTD-1,dust, fungus\nTD-2,dry,,\n"), proof);
  REQUIRE(proof.faults.size() == 1);
  CHECK(proof.faults[0].place.line == 2);
  CHECK(proof.faults[0].place.column == 12);
}

TEST_CASE("a quote that never ends is named where it begins") {
  const auto sheet = read_csv("queue.csv", "serial,note\nTD-1,\"dust\nTD-2,dry\n");
  REQUIRE_FALSE(sheet.ok());
  CHECK(sheet.problems()[0].place.line == 2);
  CHECK(sheet.problems()[0].place.column == 6);
}

TEST_CASE("an empty file has no column names") {
  CHECK_FALSE(read_csv("queue.csv", "").ok());
  CHECK_FALSE(read_csv("queue.csv", "\n\n# only a comment\n").ok());
}

TEST_CASE("property: whatever cells hold, writing and reading them gives them back") {
  CHECK(rc::check([](const std::vector<std::string>& cells) {
    for (char separator : {',', ';', '\t'}) {
      std::string text = std::string("a") + separator + "b\n";
      std::vector<std::string> kept;
      for (std::string cell : cells) {
        std::erase_if(cell, [](char c) { return c == '\r' || c < ' ' || c > '~'; });
        while (!cell.empty() && cell.front() == ' ') cell.erase(0, 1);
        while (!cell.empty() && cell.back() == ' ') cell.pop_back();
        std::string quoted = "\"";
        for (char c : cell) quoted += c == '"' ? std::string("\"\"") : std::string(1, c);
        text += std::string("x") + separator + quoted + "\"\n";
        kept.push_back(cell);
      }
      const auto sheet = read_csv("f.csv", text);
      RC_ASSERT(sheet.ok());
      RC_ASSERT(sheet->rows.size() == kept.size());
      for (std::size_t i = 0; i < kept.size(); ++i) RC_ASSERT(sheet->rows[i][1].text == kept[i]);
    }
  }));
}

TEST_CASE("property: no bytes at all make the readers stumble") {
  CHECK(rc::check([](const std::vector<unsigned char>& bytes) {
    const std::string text = as_utf8(std::string(bytes.begin(), bytes.end()));
    (void)read_csv("garbage.csv", text);
    (void)read_csv("garbage.csv", "serial,kind\n" + text);
  }));
}
