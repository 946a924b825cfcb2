#include "core/papers/mixing_sheet.h"

#include <doctest/doctest.h>

#include "adapters/files/messages.h"
#include "adapters/pdf/pdf.h"
#include "tests/pdf/page_boxes.h"

using namespace dampward;
using namespace dampward::papers;
using namespace dampward::papers::test;

namespace {

MixingSheet sheet_of(int units, int lots) {
  MixingSheet sheet;
  sheet.pot = "M1";
  sheet.shop = "Tamarin Delta river-health service, radio workshop";
  for (int i = 0; i < units; ++i) sheet.units.push_back("TD-" + std::to_string(300 + i));
  sheet.ready = {0.8 * litre, 1.231 * litre, 2.5 * litre};
  sheet.thinner_parts = 0.5;
  for (int i = 0; i < lots; ++i)
    sheet.takes.push_back({i == 0 ? "fungicidal phenolic varnish" : "slow thinner for damp weather",
                           "V-26-03" + std::to_string(i), (0.0421 + 0.4 * i) * litre});
  sheet.missing = 0.3 * litre;
  sheet.mix = Instant(std::chrono::hours(450'000));
  sheet.use_by = sheet.mix + std::chrono::hours(24) - std::chrono::hours(450'000 % 24);
  sheet.plan = "plan 7C2F   2027-02-01 07:00";
  return sheet;
}

std::string text_of(const Page& page, const Measure& measure) {
  std::string all;
  for (const Box& box : boxes_of(page, measure)) all += box.text + "\n";
  return all;
}

}  // namespace

TEST_CASE(
    "nothing on a mixing sheet lies over anything else or off the page, in four languages on both papers") {
  const auto measure = pdf::measure();
  for (const std::string& language : files::sheet_languages()) {
    const Words words = files::sheet_words(language).value();
    for (const Paper& paper : {a4, us_letter}) {
      for (const int lots : {1, 2, 4, 6}) {
        INFO(language << " " << paper.width << " " << lots);
        check_page(mixing_sheet(sheet_of(3 * lots, lots), paper, words, *measure), *measure);
      }
    }
  }
}

TEST_CASE("the sheet says litres rounded up, lots, ratio, until when, and what is done before a can opens") {
  const auto measure = pdf::measure();
  const Words words = files::sheet_words("en").value();
  const std::string all = text_of(mixing_sheet(sheet_of(2, 2), a4, words, *measure), *measure);
  for (const char* said : {"1.24", "43\u202fmL", "0.45\u202fL", "V-26-030", "V-26-031",
                           "2 parts of lacquer to 1 part", "2.50\u202fL", "24:00", "6.1\u202fm", "Mask on",
                           "never back into a lot", "No lot in date", "0.30\u202fL"})
    CHECK_MESSAGE(all.find(said) != std::string::npos, said);
}

TEST_CASE("a brush gets its lacquer as it comes") {
  const auto measure = pdf::measure();
  const Words words = files::sheet_words("en").value();
  MixingSheet sheet = sheet_of(1, 1);
  sheet.brushed = true;
  sheet.thinner_parts = 0;
  const std::string all = text_of(mixing_sheet(sheet, a4, words, *measure), *measure);
  CHECK(all.find("no thinner") != std::string::npos);
  CHECK(all.find("for the brush") != std::string::npos);
}
