#include "core/papers/leaflet.h"

#include <doctest/doctest.h>

#include <cmath>

#include "adapters/files/messages.h"
#include "adapters/files/shop_folder.h"
#include "adapters/pdf/pdf.h"
#include "core/base/format.h"
#include "tests/pdf/page_boxes.h"
#include "workbench/leaflet_sheet.h"

using namespace dampward;
using namespace dampward::papers;
using namespace dampward::papers::test;
using workbench::HomeHeat;

namespace {

const workbench::Workshop& shipped() {
  static const workbench::Workshop workshop = files::shipped_workshop();
  return workshop;
}

workbench::Leaflet leaflet_of(const std::string& kind, HomeHeat heat) {
  workbench::LeafletQuestion question;
  question.kind = KindId(kind);
  question.heat = heat;
  question.lacquer = LacquerId("phenolic_tung_varnish_fungicidal");
  return workbench::leaflet(shipped(), question).value();
}

std::string words_on(const LeafletSheet& sheet, const Paper& paper, const std::string& language) {
  const auto measure = pdf::measure();
  return words_of({leaflet(sheet, paper, files::sheet_words(language).value(), *measure).value()});
}

bool holds(const std::string& all, const std::string& said) {
  return all.find(said) != std::string::npos;
}

}  // namespace

TEST_CASE(
    "every shipped kind that may be treated at home has a leaflet of one page, in four languages on both "
    "papers") {
  const auto measure = pdf::measure();
  int pages = 0;
  for (const std::string& kind : shipped().kinds.ids()) {
    for (const HomeHeat heat : {HomeHeat::lamp_box, HomeHeat::sun_box, HomeHeat::dry_box}) {
      const workbench::Leaflet told = leaflet_of(kind, heat);
      if (told.refused) continue;
      for (const std::string& language : files::sheet_languages()) {
        const Words words = files::sheet_words(language).value();
        for (const Paper& paper : {a4, us_letter}) {
          INFO(kind << " " << static_cast<int>(heat) << " " << language << " " << paper.width);
          const auto page = leaflet(workbench::leaflet_sheet(told), paper, words, *measure);
          REQUIRE(page.ok());
          check_page(*page, *measure);
          ++pages;
        }
      }
    }
  }
  CHECK(pages > 200);
}

TEST_CASE("a leaflet holds its limit with value and spare, and what may never be cut from it") {
  const workbench::Leaflet told = leaflet_of("transceiver_portable_valve", HomeHeat::lamp_box);
  REQUIRE_FALSE(told.refused);
  for (const Paper& paper : {a4, us_letter}) {
    const std::string all = words_on(workbench::leaflet_sheet(told), paper, "en");
    const double limit = told.drying.never_above.celsius();
    for (const std::string& said :
         {fixed(std::floor(limit), 0) + "\u202f°C", "limit: " + told.drying.weakest, std::string("spare"),
          std::string("never spray"), std::string("never back into the box"), std::string("24\u202fh"),
          std::string("chassis may be live"), std::string("measure 0\u202fV"), std::string("Stop at once"),
          fixed(std::floor(told.drying.heat.in(watt)), 0) + "\u202fW", std::string("it explodes"),
          std::string("local codes"), told.coat.lacquer})
      CHECK_MESSAGE(holds(all, said), said);
    for (const route::ListedPart& part : told.lists.removed) CHECK_MESSAGE(holds(all, part.name), part.name);
  }
}

TEST_CASE("a leaflet rounds to the safe side") {
  LeafletSheet sheet = workbench::leaflet_sheet(leaflet_of("receiver_base", HomeHeat::lamp_box));
  sheet.lamp = 9.9 * watt;
  sheet.never_above = Temperature::celsius(44.99);
  sheet.reads_to = Temperature::celsius(43.01);
  sheet.closes = 119.6 * minute;
  sheet.before_closing = 24.2 * hour;
  sheet.safe = 30.1 * hour;
  const std::string all = words_on(sheet, a4, "en");
  for (const char* said : {"9\u202fW", "Over 44\u202f°C", "43.1", "44.9", "1.8", "1\u202fh\u202f59\u202fmin",
                           "25\u202fh", "31\u202fh"})
    CHECK_MESSAGE(holds(all, said), said);
}

TEST_CASE("words too long for one page are named, and nothing is drawn") {
  LeafletSheet sheet = workbench::leaflet_sheet(leaflet_of("receiver_base", HomeHeat::lamp_box));
  for (int i = 0; i < 60; ++i) sheet.cover.push_back("the contacts of relay number " + std::to_string(i));
  const auto measure = pdf::measure();
  const auto page = leaflet(sheet, us_letter, files::sheet_words("fr").value(), *measure);
  REQUIRE_FALSE(page.ok());
  CHECK(page.problems().front().found.find("relay number 59") != std::string::npos);
  CHECK(page.problems().front().next.find("Shorter names") != std::string::npos);
}
