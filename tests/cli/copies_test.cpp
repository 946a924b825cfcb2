#include <doctest/doctest.h>

#include <cmath>
#include <filesystem>
#include <string>
#include <vector>

#include "tests/cli/demo_shop.h"
#include "tests/cli/program.h"
#include "tests/pdf/copies.h"

// Figures somebody acts on, read by a packaged reader of print (tesseract) from a bad copy of a bad copy.

namespace {

namespace fs = std::filesystem;
namespace copies = dampward::papers::test;

// What the reader makes of one page, without blanks.
std::string read_from_copy(const fs::path& sheet, int page, const fs::path& scratch) {
  const fs::path picture = scratch / "page.pgm";
  const std::string number = std::to_string(page);
  copies::said_by("pdftoppm -gray -r 220 -f " + number + " -l " + number + " -singlefile '" + sheet.string() +
                  "' '" + (scratch / "page").string() + "'");
  copies::write_grey(copies::copied(copies::copied(copies::read_grey(picture), 1), 1), picture);
  std::string text = copies::said_by("tesseract '" + picture.string() + "' - --psm 11 --dpi 220 2>/dev/null");
  std::erase_if(text, [](unsigned char c) { return std::isspace(c) != 0; });
  return text;
}

std::string clock_of(const Json& time) {
  return time.get<std::string>().substr(11, 5);
}

std::string whole(const Json& figure) {
  return std::to_string(static_cast<int>(std::floor(figure.get<double>())));
}

void check_read(const std::string& text, const std::vector<std::string>& figures) {
  for (const std::string& figure : figures)
    CHECK_MESSAGE(text.find(figure) != std::string::npos, figure << " in " << text);
}

}  // namespace

TEST_CASE("what is acted on still reads on a copy of a copy: oven, pot and coats") {
  const DemoShop demo;
  const ScratchFolder scratch;
  const fs::path out = scratch.path() / "sheets";
  REQUIRE(dampward_run({"plan", demo.folder(), "--out", out.string()}).exit_code == 0);
  const Json plan = only_document(dampward_run({"plan", demo.folder(), "--json"}));

  const Json& load = plan["loads"].at(1);
  check_read(read_from_copy(out / ("oven_" + load["id"].get<std::string>() + ".pdf"), 1, scratch.path()),
             {clock_of(load["starts_at"]), whole(load["set_point_c"]) + "°", "60°Climit", "explodes"});

  const Json& pot = plan["mixing"].at(3);
  check_read(read_from_copy(out / ("mixing_" + pot["pot"].get<std::string>() + ".pdf"), 1, scratch.path()),
             {clock_of(pot["mix_at"]), "24:00", "neverbackintoalot"});

  for (const Json& window : plan["windows"]) {
    if (window["unit"] != "TD-0107") continue;
    check_read(read_from_copy(out / "card_td-0107.pdf", 5, scratch.path()),
               {clock_of(window["leaves_oven_at"]), clock_of(window["closes_at"]), "heatoff"});
  }
}
