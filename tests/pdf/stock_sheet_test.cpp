#include "core/papers/stock_sheet.h"

#include <doctest/doctest.h>

#include "adapters/files/messages.h"
#include "adapters/pdf/pdf.h"
#include "tests/pdf/page_boxes.h"

using namespace dampward;
using namespace dampward::papers;
using namespace dampward::papers::test;

namespace {

StockSheet sheet_of(int items, int lots, const std::string& name) {
  StockSheet sheet;
  sheet.shop = "Tamarin Delta river-health service, radio workshop";
  sheet.from = Instant(std::chrono::hours(500'227));
  for (int i = 0; i < items; ++i) {
    StockSheet::Item item{
        name,       {2.5 * litre, 8.871 * litre, 40.991 * litre}, 26 * litre, 14.991 * litre,
        i % 3 == 0, sheet.from + std::chrono::hours(25),          {}};
    if (i % 3 == 1) item.needed.high = 9.004 * litre;
    for (int k = 0; k < lots; ++k)
      item.lots.push_back(
          {"V-26-03" + std::to_string(k), 6.009 * litre, parse_date("2027-04-30"), k == lots - 1});
    item.lots.push_back({"V-undated", 1 * litre, std::nullopt, false});
    sheet.items.push_back(item);
  }
  sheet.plan = "plan 7C2F   2027-02-01 07:00";
  return sheet;
}

}  // namespace

TEST_CASE(
    "nothing on a stock sheet lies over anything else or off the page, in four languages on both papers") {
  const auto measure = pdf::measure();
  for (const std::string& language : files::sheet_languages()) {
    const Words words = files::sheet_words(language).value();
    for (const Paper& paper : {a4, us_letter}) {
      for (const int many : {1, 3, 9}) {
        INFO(language << " " << paper.width << " " << many);
        check_pages(stock_sheet(sheet_of(many, many, "fungicidal phenolic varnish"), paper, words, *measure),
                    *measure);
      }
    }
  }
}

TEST_CASE("a stock sheet says what is short, how much to get, every lot and date, need up and stock down") {
  const auto measure = pdf::measure();
  const Words words = files::sheet_words("en").value();
  const std::string all = words_of(stock_sheet(sheet_of(3, 2, "varnish"), a4, words, *measure));
  for (const char* said :
       {"Short: 26.00\u202fL in stock. Usual use 8.88\u202fL, at worst 41.00\u202fL. Do not begin",
        "Get 15.00\u202fL more.", "V-26-030", "V-26-031", "2027-04-30", "9.01\u202fL", "16.99\u202fL",
        "6.00\u202fL", "May run short", "Past its date", "No date is written down"})
    CHECK_MESSAGE(all.find(said) != std::string::npos, said);
}

TEST_CASE("an item with a name of 200 letters and no lot still makes a page") {
  const auto measure = pdf::measure();
  const Words words = files::sheet_words("id").value();
  StockSheet sheet = sheet_of(1, 1, std::string(200, 'x'));
  sheet.items.front().lots.clear();
  sheet.items.front().first_use.reset();
  const Pages pages = stock_sheet(sheet, us_letter, words, *measure);
  CHECK(words_of(pages).find(words("stock_no_lot")) != std::string::npos);
  CHECK(pdf::pdf_of(pages, {"long", Instant{}}).starts_with("%PDF"));
}
