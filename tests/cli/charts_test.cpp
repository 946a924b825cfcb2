#include <doctest/doctest.h>

#include <filesystem>
#include <set>

#include "tests/cli/demo_shop.h"
#include "tests/cli/program.h"

// The charts as a person asks for them: files, bad input, nothing half-written.

namespace fs = std::filesystem;

namespace {

std::set<std::string> names_in(const fs::path& folder) {
  std::set<std::string> names;
  if (!fs::exists(folder)) return names;
  for (const auto& entry : fs::directory_iterator(folder)) names.insert(entry.path().filename().string());
  return names;
}

// Runs the verb with a place to write to, which must be left alone, and gives what it said.
std::string refused(std::vector<std::string> words, const fs::path& place) {
  words.insert(words.begin(), "charts");
  words.insert(words.end(), {"--out", place.string()});
  const Run run = dampward_run(words);
  CHECK(run.exit_code == 2);
  CHECK(run.out.empty());
  CHECK_FALSE(fs::exists(place));
  return run.err;
}

}  // namespace

TEST_CASE("charts of a shop are written with a manifest, the same bytes each time") {
  const DemoShop demo;
  const fs::path place = demo.path("charts");
  REQUIRE(dampward_run({"charts", demo.folder(), "--out", place.string()}).exit_code == 0);
  CHECK(names_in(place) == std::set<std::string>{"bake_1.pdf", "bake_2.pdf", "dew.pdf", "fan.pdf",
                                                 "litres.pdf", "manifest.json", "window.pdf"});
  for (const std::string& name : names_in(place))
    if (name.ends_with(".pdf")) CHECK(whole_text(place / name).starts_with("%PDF"));
  const std::string first = whole_text(place / "manifest.json");
  CHECK(first.find("window.pdf") != std::string::npos);
  REQUIRE(dampward_run({"charts", demo.folder(), "--out", place.string()}).exit_code == 0);
  CHECK(whole_text(place / "manifest.json") == first);
  REQUIRE(dampward_run({"charts", demo.folder(), "--out", place.string(), "--lang", "fr"}).exit_code == 0);
  CHECK(whole_text(place / "manifest.json") != first);
}

TEST_CASE("charts say what is missing or wrong, and write nothing") {
  const DemoShop demo;
  const fs::path place = demo.path("charts");
  const std::string weather = demo.path("weather.epw").string();

  std::string said =
      refused({"--weather", demo.path("nowhere.epw").string(), "--lacquer", "acrylic_solvent"}, place);
  CHECK(said.find("nowhere.epw") != std::string::npos);
  said = refused({"--lacquer", "acrylic_solvent"}, place);
  CHECK(said.find("--weather") != std::string::npos);
  said = refused({"--weather", weather}, place);
  CHECK(said.find("--lacquer") != std::string::npos);
  said = refused({"--weather", weather, "--lacquer", "acrylic_solvant"}, place);
  CHECK(said.find("acrylic_solvent") != std::string::npos);
  CHECK(said.find("phenolic_tung_varnish_fungicidal") != std::string::npos);
  said = refused({demo.folder(), "--lacquer", "delta_varnysh"}, place);
  CHECK(said.find("Did you mean \"delta_varnish\"?") != std::string::npos);
  said = refused({demo.folder(), "--mixing-factor", "2"}, place);
  CHECK(said.find("at most 1") != std::string::npos);
  said = refused({demo.folder(), "--evenness", "4 K"}, place);
  CHECK(said.find("--evenness") != std::string::npos);
  said = refused({"--weather", weather, "--lacquer", "acrylic_solvent", "--evenness", "40 K"}, place);
  CHECK(said.find("at most 20 K") != std::string::npos);
  said = refused({demo.folder(), "--lang", "tlh"}, place);
  CHECK(said.find("one of en, es, fr and id") != std::string::npos);
  said = refused({demo.folder(), "--paper", "a3"}, place);
  CHECK(said.find("--paper letter") != std::string::npos);
  demo.replace("site.toml", "weather = \"weather.epw\"", "");
  said = refused({demo.folder()}, place);
  CHECK(said.find("no weather file") != std::string::npos);
}

TEST_CASE("a weather file without a column the charts need is refused, line and all") {
  const DemoShop demo;
  // A TMY3 file whose head has lost its dew point.
  demo.write(
      "weather.csv",
      "912120,\"A PLACE\",GU,10.0,13.483,144.800,78\nDate (MM/DD/YYYY),Time (HH:MM),Dry-bulb (C),RHum (%)\n"
      "01/01/1990,01:00,25.0,80\n");
  const std::string said = refused(
      {"--weather", demo.path("weather.csv").string(), "--lacquer", "acrylic_solvent"}, demo.path("charts"));
  CHECK(said.find("weather.csv") != std::string::npos);
  CHECK(said.find("ew") != std::string::npos);
  // An hour without any humidity at all.
  demo.write("short.epw", demo.text("weather.epw").substr(0, 4000));
  CHECK(refused({"--weather", demo.path("short.epw").string(), "--lacquer", "acrylic_solvent"},
                demo.path("charts"))
            .find("short.epw") != std::string::npos);
}

TEST_CASE("a climate the charts do not cover gets none, and is told how much of it lies on them") {
  const DemoShop demo;
  // Every hour at -18 °C, as in a northern winter: column 6 is dry bulb, 7 dew point, 8 humidity.
  demo.write("cold.epw", weather_with({{6, "-18.0"}, {7, "-20.0"}, {8, "84"}}));
  const std::string said = refused(
      {"--weather", demo.path("cold.epw").string(), "--lacquer", "acrylic_solvent"}, demo.path("charts"));
  CHECK(said.find("cold.epw") != std::string::npos);
  CHECK(said.find("0 % of the hours") != std::string::npos);
  CHECK(said.find("50 % or more") != std::string::npos);
}

TEST_CASE("a name too long for one page is refused and named, and nothing is written") {
  const DemoShop demo;
  demo.replace(
      "spray.toml", "suction cup gun on the foot pump",
      "suction cup gun on the foot pump that was built out of two bicycles, a barrel and much patience");
  const std::string said = refused({demo.folder()}, demo.path("charts"));
  CHECK(said.find("two bicycles") != std::string::npos);
  CHECK(said.find("too long") != std::string::npos);
}

TEST_CASE("a folder that holds something else is left alone") {
  const DemoShop demo;
  fs::create_directory(demo.path("photos"));
  demo.write("photos/boat.txt", "a boat");
  const Run run = dampward_run({"charts", demo.folder(), "--out", demo.path("photos").string()});
  CHECK(run.exit_code == 2);
  CHECK(names_in(demo.path("photos")) == std::set<std::string>{"boat.txt"});
}

TEST_CASE("a lacquer that nobody may spray there keeps its other charts") {
  const DemoShop demo;
  const Run run = dampward_run(
      {"charts", "--weather", demo.path("weather.epw").string(), "--lacquer", "polyurethane_one_part"});
  CHECK(run.exit_code == 0);
  CHECK(run.out.find("no fan chart") != std::string::npos);
}
