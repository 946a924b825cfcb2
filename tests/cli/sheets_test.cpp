#include <doctest/doctest.h>

#include <algorithm>
#include <cctype>
#include <cmath>
#include <cstdio>
#include <filesystem>
#include <map>
#include <memory>
#include <set>

#include "adapters/files/messages.h"
#include "tests/cli/demo_shop.h"
#include "tests/cli/program.h"

// The sheets of the demo as a second program (pdftotext) reads them, against the plan's own JSON.

namespace {

namespace fs = std::filesystem;

std::string said_by_shell(const std::string& command) {
  std::string text;
  const std::unique_ptr<FILE, int (*)(FILE*)> pipe(popen(command.c_str(), "r"), pclose);
  REQUIRE(pipe != nullptr);
  for (int c = std::fgetc(pipe.get()); c != EOF; c = std::fgetc(pipe.get())) text += static_cast<char>(c);
  return text;
}

// Without blanks of any width: lines are broken where the page has room.
std::string solid(std::string text) {
  for (const char* blank : {"\u202f", "\u00a0"}) {
    for (std::size_t at = text.find(blank); at != std::string::npos; at = text.find(blank))
      text.erase(at, std::string(blank).size());
  }
  std::erase_if(text, [](unsigned char c) { return std::isspace(c) != 0; });
  return text;
}

std::string words_of(const fs::path& sheet) {
  return solid(said_by_shell("pdftotext -raw '" + sheet.string() + "' -"));
}

std::string lower(std::string text) {
  std::transform(text.begin(), text.end(), text.begin(), [](unsigned char c) { return std::tolower(c); });
  return text;
}

std::map<std::string, std::string> bytes_in(const fs::path& folder) {
  std::map<std::string, std::string> files;
  for (const auto& entry : fs::directory_iterator(folder))
    files[entry.path().filename().string()] = whole_text(entry);
  return files;
}

bool contains(const std::string& text, const std::string& part) {
  return text.find(solid(part)) != std::string::npos;
}

// A time of the plan's JSON as a wall clock shows it, in whole minutes down or up.
std::string clock_of(const std::string& iso, bool up = false) {
  int minutes = std::stoi(iso.substr(11, 2)) * 60 + std::stoi(iso.substr(14, 2));
  if (up && iso.substr(17, 2) != "00") ++minutes;
  const auto two = [](int figure) { return (figure < 10 ? "0" : "") + std::to_string(figure); };
  return two(minutes / 60 % 24) + ":" + two(minutes % 60);
}

}  // namespace

TEST_CASE(
    "the card of every unit holds its steps' times, its limits, its cautions, its masks and its window") {
  const DemoShop demo;
  const ScratchFolder scratch;
  const fs::path out = scratch.path() / "sheets";
  REQUIRE(dampward_run({"plan", demo.folder(), "--out", out.string()}).exit_code == 0);
  const Json plan = only_document(dampward_run({"plan", demo.folder(), "--json"}));
  const auto words = dampward::files::sheet_words("en").value();
  // Rows of the hazard table that meet every unit, those that meet the oven, and those that meet a gun.
  const std::set<std::string> every = {"H01", "H02", "H14", "H15", "H16", "H17", "H18", "H19", "H20",
                                       "H21", "H22", "H23", "H24", "H30", "H32", "H33", "H37", "H38",
                                       "H40", "H41", "H42", "H43", "H44", "H45", "H49", "H50", "unknown"};
  const std::set<std::string> oven = {"H25", "H26", "H27", "H28", "H29"}, gun = {"H34", "H35", "H39"};
  std::size_t cards = 0;
  for (const Json& unit : plan["treatments"]) {
    const std::string serial = unit["unit"];
    INFO(serial);
    const std::string card = words_of(out / ("card_" + lower(serial) + ".pdf"));
    ++cards;
    CHECK(contains(card, serial));
    CHECK(contains(card, "damp sits here: "));
    std::set<std::string> hazards = every;
    if (!unit["load"].is_null()) hazards.insert(oven.begin(), oven.end());
    if (unit["way"] == "spray_stripped") hazards.insert(gun.begin(), gun.end());
    for (const std::string& hazard : hazards) {
      INFO(hazard);
      CHECK(contains(card, words("caution_" + hazard)));
    }
    for (const char* list : {"mask", "out_before_heat", "tighten", "loosen", "touch_up"}) {
      for (const Json& line : unit[list]) {
        INFO(line);
        CHECK(contains(card, line.get<std::string>()));
      }
    }
    for (const Json& step : unit["steps"]) {
      INFO(step["id"]);
      // Flashing off stands between the coats, in their row.
      if (!says(step["id"], "flash")) CHECK(contains(card, clock_of(step["starts_at"])));
    }
    for (const Json& window : plan["windows"]) {
      if (window["unit"] != serial) continue;
      CHECK(contains(card, clock_of(window["closes_at"])));
      CHECK(contains(card, clock_of(window["first_coat_at"])));
    }
    for (const Json& load : plan["loads"]) {
      if (load["id"] != unit["load"]) continue;
      for (const Json& part : load["parts"]) {
        if (part["part"] != load["weakest_part"] || part["unit"] != load["weakest_unit"]) continue;
        CHECK(contains(card,
                       std::to_string(static_cast<int>(std::floor(part["limit_c"].get<double>()))) + "°C"));
        CHECK(
            contains(card, std::to_string(static_cast<int>(std::ceil(part["peak_c"].get<double>()))) + "°C"));
      }
      CHECK(contains(card,
                     "set " + std::to_string(static_cast<int>(load["set_point_c"].get<double>())) + "°C"));
    }
  }
  CHECK(cards == plan["treated"].get<std::size_t>());
}

// The JSON rounds, a sheet rounds up: the figure at either end of the JSON's own rounding will do.
bool holds_up(const std::string& sheet, double figure, int places, const std::string& unit) {
  const double scale = std::pow(10.0, places);
  for (const double off : {-0.006, 0.0, 0.006}) {
    char text[32];
    std::snprintf(text, sizeof text, "%.*f", places, std::ceil((figure + off) * scale - 1e-6) / scale);
    if (contains(sheet, text + unit)) return true;
  }
  return false;
}

TEST_CASE("the safety sheet holds the figures of the room and of everybody who breathes there") {
  const DemoShop demo;
  const ScratchFolder scratch;
  const fs::path out = scratch.path() / "sheets";
  REQUIRE(dampward_run({"plan", demo.folder(), "--out", out.string()}).exit_code == 0);
  const Json plan = only_document(dampward_run({"plan", demo.folder(), "--json"}));
  const std::string sheet = words_of(out / "safety.pdf");
  const Json& room = plan["rooms"].at(0);
  CHECK(contains(sheet, room["place"].get<std::string>()));
  CHECK(holds_up(sheet, room["fan_fire_m3_per_min"].get<double>(), 1, "m³/min"));
  CHECK(holds_up(sheet, room["fan_people_m3_per_min"].get<double>(), 0, "m³/min"));
  CHECK(contains(sheet, std::to_string(room["fan_m3_per_min"].get<int>()) + "m³/min"));
  CHECK(holds_up(sheet, room["near_peak_lfl_pct"].get<double>(), 1, "%"));
  CHECK(contains(sheet, std::to_string(room["allowed_lfl_pct"].get<int>()) + "%"));
  CHECK(contains(sheet, "Purge" + std::to_string(room["purge_min"].get<int>()) + "min"));
  std::size_t people = 0;
  for (const Json& person : plan["people"]) {
    if (person["respirator_factor"].is_null()) continue;
    INFO(person["person"].get<std::string>());
    CHECK(holds_up(
        sheet, std::max(person["exposure_index"].get<double>(), person["stel_index"].get<double>()), 1, "×"));
    CHECK(contains(sheet, std::to_string(person["respirator_factor"].get<int>()) + "×"));
    CHECK(holds_up(sheet, person["peak_ppm"].get<double>(), 0, "ppm"));
    CHECK(contains(sheet, std::to_string(static_cast<int>(person["highest_use_ppm"].get<double>())) + "ppm"));
    ++people;
  }
  CHECK(people > 2);
}

TEST_CASE("the stock sheet holds every item's need, what is there, what to get and its lots in order") {
  const DemoShop demo;
  const ScratchFolder scratch;
  const fs::path out = scratch.path() / "sheets";
  REQUIRE(dampward_run({"plan", demo.folder(), "--out", out.string()}).exit_code == 0);
  const Json plan = only_document(dampward_run({"plan", demo.folder(), "--json"}));
  const std::string sheet = words_of(out / "stock.pdf");
  for (const Json& item : plan["stock"]) {
    INFO(item["item"].get<std::string>());
    CHECK(holds_up(sheet, item["needed_l"]["typical"].get<double>(), 2, "L"));
    CHECK(holds_up(sheet, item["needed_l"]["high"].get<double>(), 2, "L"));
    CHECK(holds_up(sheet, item["in_stock_l"].get<double>(), 2, "L"));
    CHECK(holds_up(sheet, item["to_get_l"].get<double>(), 2, "L"));
    std::size_t at = 0;
    for (const Json& lot : item["lots"]) {
      const std::size_t next = sheet.find(solid(lot.get<std::string>()));
      CHECK(next != std::string::npos);
      CHECK(next >= at);
      at = next;
    }
  }
}

TEST_CASE("a picture that looks like one and is none stops the plan before anything is written") {
  const DemoShop demo;
  const ScratchFolder scratch;
  demo.write("pictures/river_phone.svg", "<svg xmlns='http://www.w3.org/2000/svg'><rect");
  const fs::path out = scratch.path() / "sheets";
  for (const auto& asked : {std::vector<std::string>{"plan", demo.folder(), "--out", out.string()},
                            std::vector<std::string>{"proofread", demo.folder()}}) {
    const auto run = dampward_run(asked);
    CHECK(run.exit_code == 2);
    CHECK(says(run.err, "pictures/river_phone.svg"));
    CHECK(says(run.err, "cannot be drawn"));
  }
  CHECK_FALSE(fs::exists(out));
}

TEST_CASE("a disk that fills half-way leaves the earlier sheets as they were and nothing beside them") {
  const DemoShop demo;
  const ScratchFolder scratch;
  const fs::path out = scratch.path() / "sheets";
  REQUIRE(dampward_run({"plan", demo.folder(), "--out", out.string()}).exit_code == 0);
  const auto before = bytes_in(out);
  demo.write_queue({"TD-0311,river_phone,damp,dust,,0,"});
  // A limit on the size of a file stands in for the full disk: small files are written, a sheet is not.
  const std::string said = said_by_shell(
      "sh -c 'trap \"\" XFSZ; ulimit -f 16; \"$0\" plan \"$1\" --out \"$2\" 2>&1; echo code $?' " +
      std::string(DAMPWARD_PROGRAM) + " '" + demo.folder() + "' '" + out.string() + "'");
  CHECK(says(said, "code 1"));
  CHECK(says(said, "sheets"));
  CHECK(bytes_in(out) == before);
  CHECK_FALSE(fs::exists(scratch.path() / "sheets.part"));
}

TEST_CASE("sixty units print, each with a card") {
  const DemoShop demo;
  const ScratchFolder scratch;
  demo.write_queue(long_queue(demo, 60));
  const fs::path out = scratch.path() / "sheets";
  REQUIRE(dampward_run({"plan", demo.folder(), "--out", out.string()}).exit_code == 0);
  const Json plan = only_document(dampward_run({"plan", demo.folder(), "--json"}));
  std::size_t cards = 0;
  for (const auto& [name, bytes] : bytes_in(out)) {
    if (name.starts_with("card_")) ++cards;
    if (name.ends_with(".pdf")) CHECK(bytes.starts_with("%PDF"));
  }
  CHECK(cards == plan["treated"].get<std::size_t>());
}
