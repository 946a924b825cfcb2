#include "core/papers/labels.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "adapters/files/messages.h"
#include "adapters/pdf/pdf.h"
#include "tests/pdf/copies.h"
#include "tests/pdf/page_boxes.h"

using namespace dampward;
using namespace dampward::papers;
using namespace dampward::papers::test;

namespace {

LabelSet set_of(int units, int bags, const std::string& name = "") {
  LabelSet set;
  set.shop = "Tamarin Delta river-health service, radio workshop";
  for (int i = 0; i < units; ++i) {
    LabelSet::Unit unit;
    unit.serial = name.empty() ? "TD-0" + std::to_string(400 + i) : name + std::to_string(i);
    unit.kind = name.empty() ? "river-launch radio" : name;
    unit.lacquer = name.empty() ? "fungicidal phenolic varnish" : name;
    unit.sprayed = i % 2 == 0;
    unit.coats = 1 + i % 3;
    unit.lots = {{"fungicidal phenolic varnish", "V-26-031"}, {"slow thinner for damp weather", "T-26-002"}};
    unit.lacquered = Instant(std::chrono::hours(500'227));
    for (int b = 1; b < bags; ++b)
      unit.bags.push_back({name.empty() ? "handset with its cord " + std::to_string(b) : name, b});
    unit.bags.push_back({});
    unit.goes_back = unit.lacquered + std::chrono::hours(50);
    unit.back_where = name.empty() ? "strip and assembly bench" : name;
    set.units.push_back(unit);
  }
  set.plan = "plan 7C2F   2027-01-25 07:00";
  return set;
}

std::vector<std::string> codes_of(const LabelSet& set) {
  std::vector<std::string> codes;
  for (const LabelSet::Unit& unit : set.units) {
    codes.push_back("DAMPWARD " + unit.serial + " LABEL");
    for (std::size_t b = 1; b <= unit.bags.size(); ++b)
      codes.push_back("DAMPWARD " + unit.serial + " BAG " + std::to_string(b));
  }
  std::sort(codes.begin(), codes.end());
  return codes;
}

std::vector<std::string> sorted(std::vector<std::string> codes) {
  std::sort(codes.begin(), codes.end());
  return codes;
}

}  // namespace

TEST_CASE(
    "nothing on labels and tags lies over anything else or off the page, in four languages on both papers") {
  const auto measure = pdf::measure();
  for (const std::string& language : files::sheet_languages()) {
    const Words words = files::sheet_words(language).value();
    for (const Paper& paper : {a4, us_letter}) {
      for (const auto& [units, bags] : {std::pair(1, 1), {3, 4}, {14, 7}}) {
        INFO(language << " " << paper.width << " " << units);
        check_pages(labels(set_of(units, bags), paper, words, *measure), *measure);
      }
    }
  }
}

TEST_CASE(
    "a label says serial, what was done with which lots, and dates, and a tag whose it is and what is in "
    "it") {
  const auto measure = pdf::measure();
  const Words words = files::sheet_words("en").value();
  const LabelSet set = set_of(2, 3);
  const std::string all = words_of(labels(set, a4, words, *measure));
  for (const char* said :
       {"TD-0400", "TD-0401", "One coat, sprayed", "2 coats, brushed", "V-26-031", "T-26-002", "2027-01-24",
        "look again", "bag 1 of 3", "bag 3 of 3", "2 × handset with its cord 2", "screws and covers",
        "Goes back Tue", "strip and assembly bench"})
    CHECK_MESSAGE(all.find(said) != std::string::npos, std::string(said));
}

TEST_CASE("a lot that the stock does not have is left open for the pencil") {
  const auto measure = pdf::measure();
  const Words words = files::sheet_words("en").value();
  LabelSet set = set_of(1, 1);
  set.units.front().lots.clear();
  CHECK(words_of(labels(set, a4, words, *measure)).find("lot\u00a0____") != std::string::npos);
}

TEST_CASE("a reader of codes finds every label and every bag, and still does on a copy of a copy") {
  const auto measure = pdf::measure();
  const Words words = files::sheet_words("en").value();
  for (const Paper& paper : {a4, us_letter}) {
    const LabelSet set = set_of(3, 4);
    const Pages pages = labels(set, paper, words, *measure);
    CHECK(sorted(codes_on(pages, 0)) == codes_of(set));
    CHECK(sorted(codes_on(pages, 2)) == codes_of(set));
  }
}

TEST_CASE("the longest code that may stand on a label is read from a copy of a copy") {
  const auto measure = pdf::measure();
  const Words words = files::sheet_words("en").value();
  LabelSet set = set_of(1, 1, std::string(longest_code - std::string("DAMPWARD 0 LABEL").size(), 'K'));
  set.units.front().kind = "river-launch radio";
  CHECK(sorted(codes_on(labels(set, a4, words, *measure), 2)) == codes_of(set));
}

TEST_CASE(
    "names of 200 letters stay whole on labels and tags, and a code too long for a copier is left out") {
  const auto measure = pdf::measure();
  for (const std::string& language : files::sheet_languages()) {
    const Words words = files::sheet_words(language).value();
    for (const std::string& name : {std::string(200, 'W'), std::string("📻📻 ") + std::string(60, 'm'),
                                    std::string("جهاز راديو النهر")}) {
      const LabelSet set = set_of(2, 2, name);
      const Pages pages = labels(set, us_letter, words, *measure);
      check_pages(pages, *measure);
      CHECK(words_of(pages).find(set.units[0].serial) != std::string::npos);
      if (name.size() >= longest_code) CHECK(codes_on(pages, 0).empty());
    }
  }
}
