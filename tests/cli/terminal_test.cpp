#include <doctest/doctest.h>

#include <algorithm>
#include <regex>
#include <sstream>

#include "apps/cli/page_text.h"
#include "apps/cli/screen.h"
#include "apps/cli/toned.h"
#include "tests/cli/at_screen.h"
#include "tests/cli/demo_shop.h"
#include "tests/cli/program.h"

using dampward::cli::columns;
using dampward::cli::terminal_screen;
using dampward::cli::wrapped;

namespace {

// Without colour, and without lines that were wiped while it was drawn.
std::string bare(const std::string& text) {
  std::string page = std::regex_replace(text, std::regex("\x1b\\[[0-9;]*m"), "");
  const std::size_t wiped = page.rfind('\r');
  return wiped == std::string::npos ? page : page.substr(wiped + 1);
}

bool has_colour(const std::string& text) {
  return says(text, "\x1b[");
}

std::string words_only(const std::string& page) {
  std::istringstream in(page);
  std::string all;
  for (std::string word; in >> word;) all += word + " ";
  return all;
}

std::size_t widest(const std::string& page) {
  std::istringstream in(page);
  std::size_t most = 0;
  for (std::string line; std::getline(in, line);) most = std::max(most, columns(line));
  return most;
}

}  // namespace

TEST_CASE("a plan has colour on a terminal, and the same words as without") {
  const DemoShop shop;
  const Seen seen = dampward_on_screen({"plan", shop.folder()}, 80);
  CHECK(seen.exit_code == 0);
  CHECK(says(seen.text, "\x1b[1;31mNOT SAFE TO TREAT\x1b[0m"));
  CHECK(says(seen.text, "\x1b[1;31m TD-0801\x1b[0m:"));
  const Run piped = dampward_run({"plan", shop.folder()});
  CHECK_FALSE(has_colour(piped.out));
  CHECK(piped.err.empty());
  CHECK(bare(seen.text) == piped.out);
}

TEST_CASE("no colour with NO_COLOR, nor on a dumb or an unknown terminal, nor in a JSON answer") {
  const DemoShop shop;
  const std::vector<std::string> plan{"plan", shop.folder()};
  CHECK_FALSE(has_colour(dampward_on_screen(plan, 80, {"TERM=xterm", "NO_COLOR=1"}).text));
  CHECK(has_colour(dampward_on_screen(plan, 80, {"TERM=xterm", "NO_COLOR="}).text));
  CHECK_FALSE(has_colour(dampward_on_screen(plan, 80, {"TERM=dumb"}).text));
  CHECK_FALSE(has_colour(dampward_on_screen(plan, 80, {}).text));
  CHECK_FALSE(has_colour(dampward_on_screen({"plan", shop.folder(), "--json"}, 80).text));
}

TEST_CASE("a narrow terminal gets the plan folded, with no word lost from its loads, refusals and cautions") {
  const DemoShop shop;
  const std::string wide = words_only(dampward_run({"plan", shop.folder()}).out);
  for (const std::size_t width : {72, 60, 40}) {
    const std::string page = bare(dampward_on_screen({"plan", shop.folder()}, width).text);
    INFO(width, "\n", page);
    CHECK(widest(page) <= width);
    const std::string words = words_only(page);
    for (const std::string part :
         {"NOT SAFE TO TREAT", "CAUTIONS (", "TD-0801: nobody knows what", "TD-0204 smoothing capacitors",
          "its vapour would explode.", "the same command with --json."}) {
      INFO(part);
      CHECK(says(words, part));
    }
  }
}

TEST_CASE("a wide terminal shows whole names where 80 columns cut them, up to 120 columns") {
  const DemoShop shop;
  const std::string narrow = dampward_run({"plan", shop.folder()}).out;
  REQUIRE(says(narrow, "…"));
  const std::string page = bare(dampward_on_screen({"plan", shop.folder()}, 200).text);
  INFO(page);
  CHECK_FALSE(says(page, "…"));
  CHECK(widest(page) > 80);
  CHECK(widest(page) <= 120);
}

TEST_CASE("COLUMNS goes before the terminal's own width, and says nothing where no terminal is") {
  const DemoShop shop;
  const std::vector<std::string> plan{"plan", shop.folder()};
  CHECK(widest(bare(dampward_on_screen(plan, 80, {"TERM=xterm", "COLUMNS=50"}).text)) <= 50);
  CHECK(terminal_screen(90, {}).columns == 90);
  CHECK(terminal_screen(90, {.columns = "60"}).columns == 60);
  CHECK(terminal_screen(90, {.columns = "wide"}).columns == 90);
  CHECK(terminal_screen(0, {.columns = "5"}).columns == 80);
  CHECK(dampward::cli::Screen().columns == 80);
}

TEST_CASE("what a change moves is folded too") {
  const DemoShop shop;
  const Seen seen = dampward_on_screen({"plan", shop.folder(), "--what-if", "ovens.locker.lamps=3"}, 50);
  CHECK(says(seen.text, "\x1b[1mWHAT MOVES\x1b[0m"));
  CHECK(widest(bare(seen.text)) <= 50);
}

TEST_CASE("a number and its unit stay on one line") {
  for (std::size_t width = 6; width < 60; ++width) {
    for (const std::string& line :
         wrapped("hold it at 105 °C for 12.5 h, with (45.0 m³/min) of air", width, 2)) {
      INFO(width, ": ", line);
      for (const std::string number : {"105", "12.5", "(45.0"}) CHECK_FALSE(line.ends_with(number));
    }
  }
}

TEST_CASE("long work is told on one line of the terminal, which is gone when the plan is there") {
  const DemoShop shop;
  shop.write_queue(long_queue(shop, 120));
  const Seen seen = dampward_on_screen({"plan", shop.folder()}, 60, {"TERM=dumb"});
  INFO(seen.text);
  CHECK(seen.exit_code == 0);
  const std::size_t page = seen.text.find("Treatment plan");
  REQUIRE(page != std::string::npos);
  const std::string before = seen.text.substr(0, page);
  CHECK(says(before, " ..."));
  CHECK_FALSE(says(before, "\n"));
  CHECK(before.ends_with("\r" + std::string(59, ' ') + "\r"));
  std::istringstream drawn(before);
  for (std::string line; std::getline(drawn, line, '\r');) CHECK(columns(line) < 60);
}
