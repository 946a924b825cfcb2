#include "core/papers/work_card.h"

#include <doctest/doctest.h>

#include "adapters/files/messages.h"
#include "adapters/pdf/pdf.h"
#include "tests/pdf/copies.h"
#include "tests/pdf/page_boxes.h"

using namespace dampward;
using namespace dampward::papers;
using namespace dampward::papers::test;

namespace {

const Instant monday(std::chrono::hours(500'227));  // 2027-01-25 07:00

Instant at(int minutes) {
  return monday + std::chrono::minutes(minutes);
}

WorkCard card_of(int masks, int coats = 3) {
  WorkCard card;
  card.unit = "TD-0417";
  card.kind = "river-launch radio";
  card.shop = "Tamarin Delta river-health service, radio workshop";
  card.spray_hands = 153 * minute;
  card.brush_hands = 82 * minute;
  card.way_reason = "Masking the closed set saves little: cans, gang and sockets hide most of its surface";
  card.findings = {"mould", "wax_unknown", "smells of the river"};
  card.lacquer = "fungicidal phenolic varnish";
  card.coats = coats;
  card.wet_coat = {60.2 * micrometre, 66 * micrometre, 71.8 * micrometre};
  card.amount = 0.3612 * litre;
  card.pots = {"M1"};
  card.respirator = "full-face mask with combined filters, fitted";
  card.transmits = true;
  for (int i = 0; i < masks; ++i)
    card.mask.push_back(
        {"valve sockets of row " + std::to_string(i), "socket clips and both wipers", i % 4 + 1});
  for (int i = 0; i < masks / 2; ++i)
    card.removed.push_back({"handset with cord " + std::to_string(i), "take out", 1});
  card.tighten = {{"chassis", "earth lugs", 2}};
  card.touch_up = {{"tag strips", "cut edges", 10}};
  int t = 0, minutes = 20;
  const auto add = [&](const char* code, std::vector<std::string> hazards, int turn = 0, bool hands = true) {
    card.lines.push_back({"r1." + std::string(code) + (turn > 0 ? std::to_string(turn) : ""),
                          {code, turn, turn > 0 ? coats : 0},
                          at(t),
                          at(t + minutes),
                          hands,
                          hands ? std::vector<std::string>{"radio technician"} : std::vector<std::string>{},
                          "strip and assembly bench",
                          std::move(hazards)});
    t += minutes;
  };
  add("make_safe", {"H01", "H02", "H13", "H49", "H50"});
  add("test", {"H14"});
  add("strip", {"H16", "H17", "H18", "H19"});
  add("take_out", {});
  add("clean", {"H20", "H22"});
  add("salt_proof", {});
  add("solvent_free", {"H41"}, 0, false);
  add("cover", {"H23"});
  add("tighten", {});
  add("load", {"H24"});
  add("bake", {"H25", "H26", "H27", "H28", "H29"}, 0, false);
  card.bake = {"L1",
               "heater cabinet",
               "wiring form, TD-0417",
               Temperature::celsius(50),
               Temperature::celsius(55.2),
               Temperature::celsius(60),
               Temperature::celsius(45),
               181 * minute,
               at(t),
               at(t),
               std::nullopt,
               "coil formers"};
  add("unload", {});
  WorkCard::Warm warm;
  warm.leaves = warm.opens = at(t);
  for (int i = 1; i <= coats; ++i) {
    warm.starts.push_back(at(t));
    add("coat", i == 1 ? std::vector<std::string>{"H30", "H32", "H34", "H40"} : std::vector<std::string>{},
        i);
    warm.ends.push_back(at(t));
    add("flash", i == 1 ? std::vector<std::string>{"H42"} : std::vector<std::string>{}, i, false);
  }
  warm.flash_ends = at(t);
  warm.shuts = at(t + 45);
  warm.last_start = at(t - 60);
  card.warm = warm;
  for (const char* code :
       {"unmask", "touch_up", "film_dry", "airing", "mark", "reassemble", "retest", "recheck"})
    add(code, {});
  card.close_from = at(t - 60);
  card.done = at(t);
  card.plan = "plan 7C2F   2027-01-25 07:00";
  return card;
}

}  // namespace

TEST_CASE(
    "nothing on a work card lies over anything else or off the page, in four languages on both papers") {
  const auto measure = pdf::measure();
  for (const std::string& language : files::sheet_languages()) {
    const Words words = files::sheet_words(language).value();
    for (const Paper& paper : {a4, us_letter}) {
      for (const int masks : {0, 1, 7, 40}) {
        INFO(language << " " << paper.width << " " << masks);
        check_pages(work_card(card_of(masks, masks == 1    ? 1
                                             : masks == 40 ? 7
                                                           : 3),
                              paper, words, *measure),
                    *measure);
      }
    }
  }
}

TEST_CASE("a card holds every limit, caution, mask and moment of its unit") {
  const auto measure = pdf::measure();
  const Words words = files::sheet_words("en").value();
  const WorkCard card = card_of(7);
  const std::string all = words_of(work_card(card, a4, words, *measure));
  for (const WorkCard::Line& line : card.lines) {
    for (const std::string& hazard : line.hazards)
      CHECK(all.find(words("caution_" + hazard)) != std::string::npos);
  }
  CHECK(all.find(words("caution_unknown")) != std::string::npos);
  for (const WorkCard::Item& item : card.mask) CHECK(all.find(item.name) != std::string::npos);
  // The peak rounded up, the limit and what is spare down; litres up; the hold never shorter.
  for (const char* said :
       {"56\u202f°C", "4\u202fK", "60\u202f°C", "50\u202f°C", "0.37\u202fL", "3\u202fh\u202f01\u202fmin",
        "No first coat after ", "16\n", "smells of the river", "full-face mask", "2\u202fh\u202f33\u202fmin",
        "Stays damp inside: coil formers", "dummy load", "60 to 72", "melts at"})
    CHECK_MESSAGE(all.find(said) != std::string::npos, said);
  for (const Instant time : {card.warm->opens, card.warm->shuts, card.warm->last_start, card.close_from})
    CHECK(all.find(clock_of(time, card.clock)) != std::string::npos);
}

TEST_CASE("a reader of codes finds unit and step on the card, and still does on a copy of a copy") {
  const auto measure = pdf::measure();
  const Words words = files::sheet_words("en").value();
  const Pages pages = work_card(card_of(4), us_letter, words, *measure);
  const std::vector<std::string> expected = {"DAMPWARD TD-0417 R1.MAKE_SAFE", "DAMPWARD TD-0417 R1.LOAD"};
  CHECK(codes_on(pages, 0) == expected);
  CHECK(codes_on(pages, 2) == expected);
}

TEST_CASE(
    "names of 200 letters, emoji and a script from the right stay on the page, and a code that would not fit "
    "is left out") {
  const auto measure = pdf::measure();
  const Words words = files::sheet_words("fr").value();
  for (const std::string& name : {std::string(200, 'W'), std::string("📻📻 ") + std::string(60, 'm') + " ✅",
                                  std::string("جهاز راديو النهر رقم ٤١٧")}) {
    WorkCard card = card_of(3);
    card.unit = card.kind = card.bake->oven = card.mask.front().name = name;
    for (WorkCard::Line& line : card.lines) line.station = name;
    const Pages pages = work_card(card, a4, words, *measure);
    check_pages(pages, *measure);
    for (const Page& page : pages) {
      for (const Mark& mark : page.marks) {
        if (const auto* code = std::get_if<Code>(&mark)) CHECK(code->text.size() <= longest_code);
      }
    }
  }
}
