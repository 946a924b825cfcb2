#include "core/papers/flow.h"

#include <doctest/doctest.h>

#include "adapters/files/messages.h"
#include "adapters/pdf/pdf.h"
#include "tests/pdf/page_boxes.h"

using namespace dampward::papers;
using namespace dampward::papers::test;

namespace {

Row row(const std::string& name, double height, bool with_next = false) {
  return {[=](Pen& pen, double y) {
            pen.text(left_edge, y + 5, name, {reading, 400});
            return y + height;
          },
          with_next};
}

std::vector<std::string> pages_as_words(const Flow& flow) {
  const auto measure = dampward::pdf::measure();
  const Words words = dampward::files::sheet_words("en").value();
  std::vector<std::string> all;
  for (const Page& page : pages_of(flow, a4, words, *measure)) all.push_back(words_of({page}));
  return all;
}

bool has(const std::string& page, const std::string& name) {
  return page.find(name + "\n") != std::string::npos;
}

}  // namespace

TEST_CASE("rows run on to a further page whole, and every page says its number of how many") {
  Flow flow{nullptr, "Stock, 2027-02-01", {}, "stock sheet", "plan 1"};
  for (int i = 0; i < 9; ++i) flow.rows.push_back(row("row " + std::to_string(i), 50));
  const auto pages = pages_as_words(flow);
  REQUIRE(pages.size() == 2);
  CHECK(has(pages[0], "row 4"));
  CHECK(has(pages[1], "row 5"));
  CHECK(pages[1].find("Stock, 2027-02-01") != std::string::npos);
  CHECK(pages[1].find("page 2 of 2") != std::string::npos);
}

TEST_CASE("no row is left alone on a last page, nor parted from the one it goes with") {
  Flow flow{nullptr, "again", {}, "sheet", "plan 1"};
  for (int i = 0; i < 6; ++i) flow.rows.push_back(row("row " + std::to_string(i), 50));
  auto pages = pages_as_words(flow);
  REQUIRE(pages.size() == 2);
  CHECK(has(pages[1], "row 4"));
  CHECK(has(pages[1], "row 5"));

  flow.rows = {row("a", 100), row("b", 100), row("title", 20, true), row("c", 100), row("d", 100)};
  pages = pages_as_words(flow);
  REQUIRE(pages.size() == 2);
  CHECK(has(pages[1], "title"));
  CHECK(has(pages[1], "c"));
}

TEST_CASE("a row with a head of its own opens a page") {
  Flow flow{nullptr, "again", {row("a", 20), row("b", 20)}, "sheet", "plan 1"};
  flow.rows[1].head = [](Pen& pen) {
    pen.text(left_edge, 15, "second place", {doing, 600});
    return 40.0;
  };
  const auto pages = pages_as_words(flow);
  REQUIRE(pages.size() == 2);
  CHECK(has(pages[1], "second place"));
  CHECK(has(pages[1], "b"));
}
