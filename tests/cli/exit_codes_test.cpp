#include <doctest/doctest.h>

#include <algorithm>
#include <set>

#include "tests/cli/demo_shop.h"
#include "tests/cli/program.h"

// How the program ends, and what it says where the input is at fault, from the command line to the exit code.

namespace {

// A fault as it must be told: where, what stands there, what would be right.
struct Told {
  std::string file;
  int line = 0;           // 0: not asked
  std::string found;      // a piece of what is found
  std::string expected;   // a piece of what would be right
  std::string next = "";  // a piece of what to do now
};

bool matches(const Json& fault, const Told& told) {
  return fault.at("file") == told.file && (told.line == 0 || fault.at("line") == told.line) &&
         says(fault.at("found"), told.found) && says(fault.at("expected"), told.expected) &&
         says(fault.at("next"), told.next);
}

void check_shape(const Json& fault) {
  CHECK(fault.size() == 6);
  CHECK(fault.at("file").is_string());
  CHECK_FALSE(fault.at("file").get<std::string>().empty());
  for (const char* place : {"line", "column"}) {
    CHECK((fault.at(place).is_null() || (fault.at(place).is_number_integer() && fault.at(place) > 0)));
  }
  CHECK_FALSE(fault.at("found").get<std::string>().empty());
  CHECK_FALSE(fault.at("expected").get<std::string>().empty());
  CHECK(fault.at("next").is_string());
}

// Exit code 2, the fault told to a person on standard error, and again in the one JSON document.
void check_faulty(const std::vector<std::string>& arguments, const Told& told) {
  std::string asked;
  for (const auto& word : arguments) asked += word + " ";
  INFO(asked);
  const Run spoken = dampward_run(arguments);
  INFO(spoken.err);
  CHECK(spoken.exit_code == 2);
  if (arguments.empty() || arguments.front() != "proofread") CHECK(spoken.out.empty());
  CHECK(says(spoken.err, told.file));
  if (told.line > 0) CHECK(says(spoken.err, "line " + std::to_string(told.line)));
  CHECK(says(spoken.err, told.found));
  CHECK(says(spoken.err, told.expected));
  CHECK(says(spoken.err, told.next));

  std::vector<std::string> with_json = arguments;
  with_json.emplace_back("--json");
  const Run written = dampward_run(with_json);
  CHECK(written.exit_code == 2);
  const Json document = only_document(written);
  const Json& faults = document.at("faults");
  CHECK(std::any_of(faults.begin(), faults.end(), [&](const Json& fault) { return matches(fault, told); }));
  for (const Json& fault : faults) check_shape(fault);
}

// One change that spoils one file of the demo.
struct Spoilt {
  std::string file, old, by;
  std::string found, expected;
  std::string next = "";
};

// Plan and proofread both refuse it, at the line of the change.
void check_spoilt(const Spoilt& spoilt) {
  INFO(spoilt.file, ": ", spoilt.by);
  const DemoShop shop;
  const int line = shop.replace(spoilt.file, spoilt.old, spoilt.by);
  const Told told{spoilt.file, line, spoilt.found, spoilt.expected, spoilt.next};
  check_faulty({"plan", shop.folder()}, told);
  check_faulty({"proofread", shop.folder()}, told);
}

// `exposure --weather` and the folder whose site names it, both refused.
void check_weather(const std::string& text, int line, const std::string& found, const std::string& expected) {
  const DemoShop shop;
  shop.write("weather.epw", text);
  const std::string file = shop.path("weather.epw").string();
  check_faulty({"exposure", "--weather", file}, {file, line, found, expected});
  check_faulty({"exposure", shop.folder()}, {"weather.epw", line, found, expected});
  check_faulty({"plan", shop.folder()}, {"weather.epw", line, found, expected});
}

std::set<std::string> names_in(const std::filesystem::path& folder) {
  std::set<std::string> names;
  for (const auto& entry : std::filesystem::recursive_directory_iterator(folder))
    names.insert(entry.path().string());
  return names;
}

Json plan_of(const DemoShop& shop, int exit_code) {
  const Run run = dampward_run({"plan", shop.folder(), "--json"});
  INFO(run.err);
  CHECK(run.exit_code == exit_code);
  return only_document(run);
}

}  // namespace

TEST_CASE("the demo is done although one unit is refused and one is late") {
  const DemoShop shop;
  const Json plan = plan_of(shop, 0);
  CHECK(plan.at("units") == 14);
  CHECK(plan.at("treated") == 13);
  REQUIRE(plan.at("refused").size() == 1);
  CHECK(plan.at("refused")[0].at("unit") == "TD-0801");
  CHECK_FALSE(plan.at("refused")[0].at("reason").get<std::string>().empty());
  CHECK_FALSE(plan.at("refused")[0].at("settle").get<std::string>().empty());
  CHECK(plan.at("oven_loads") == plan.at("loads").size());
  CHECK(dampward_run({"plan", shop.folder()}).exit_code == 0);
  CHECK(dampward_run({"proofread", shop.folder()}).exit_code == 0);
  CHECK(dampward_run({"exposure", shop.folder()}).exit_code == 0);
}

TEST_CASE("the starter can be planned as it was written") {
  const ScratchFolder scratch;
  const std::string folder = (scratch.path() / "shop").string();
  CHECK(dampward_run({"start", folder}).exit_code == 0);
  CHECK(dampward_run({"proofread", folder}).exit_code == 0);
  CHECK(dampward_run({"plan", folder}).exit_code == 0);
}

TEST_CASE("no published value is out of tolerance") {
  const Run run = dampward_run({"selfcheck", "--json"});
  CHECK(run.exit_code == 0);
  CHECK(only_document(run).at("out_of_tolerance") == 0);
}

TEST_CASE("help and version are done, with nothing on standard error") {
  for (const auto& arguments :
       std::vector<std::vector<std::string>>{{"--help"}, {"plan", "--help"}, {"--version"}}) {
    const Run run = dampward_run(arguments);
    CHECK(run.exit_code == 0);
    CHECK(run.err.empty());
    CHECK_FALSE(run.out.empty());
  }
}

TEST_CASE("an empty queue is done") {
  const DemoShop shop;
  shop.write_queue({});
  const Json plan = plan_of(shop, 0);
  CHECK(plan.at("units") == 0);
  CHECK(plan.at("loads").empty());
  CHECK(dampward_run({"plan", shop.folder()}).exit_code == 0);
}

TEST_CASE("a queue of 500 units is planned whole: each unit has its place or its refusal") {
  const DemoShop shop;
  shop.write_queue(long_queue(shop, 500));
  const Run run = dampward_run({"plan", shop.folder(), "--json"});
  CHECK((run.exit_code == 0 || run.exit_code == 3));
  const Json plan = only_document(run);
  CHECK(plan.at("units") == 500);
  std::set<std::string> told;
  for (const char* list : {"treatments", "refused"}) {
    for (const Json& unit : plan.at(list)) told.insert(unit.at("unit"));
  }
  CHECK(told.size() == 500);
}

TEST_CASE("where every unit is refused there is no safe answer, and each refusal says what would settle it") {
  const DemoShop shop;
  shop.write_queue(
      {"TD-0801,old_supply,mould,fungus/dust,2027-02-08,0,", "TD-0802,old_supply,damp,dust,,0,"});
  const Json plan = plan_of(shop, 3);
  CHECK(plan.at("faults").empty());
  REQUIRE(plan.at("refused").size() == 2);
  for (const Json& unit : plan.at("refused")) {
    CHECK(says(unit.at("reason"), "black potted filter block"));
    CHECK_FALSE(unit.at("settle").get<std::string>().empty());
  }
  const Run spoken = dampward_run({"plan", shop.folder()});
  CHECK(spoken.exit_code == 3);
  CHECK(says(spoken.out, "TD-0801"));
}

TEST_CASE("a set too big for every oven is never put into one, and the plan says that it does not fit") {
  const DemoShop shop;
  shop.replace("ovens.toml", "[\"1100 mm\", \"700 mm\", \"1300 mm\"]", "[\"110 mm\", \"70 mm\", \"130 mm\"]");
  shop.replace("ovens.toml", "[\"900 mm\", \"500 mm\", \"1700 mm\"]", "[\"90 mm\", \"50 mm\", \"170 mm\"]");
  shop.write_queue({"TD-0204,clinic_receiver,damp,dust,2027-02-08,0,"});
  const Run run = dampward_run({"plan", shop.folder(), "--json"});
  CHECK((run.exit_code == 0 || run.exit_code == 3));
  const Json plan = only_document(run);
  CHECK(plan.at("oven_loads") == 0);
  const bool refused = !plan.at("refused").empty();
  const std::string why =
      refused ? plan.at("refused")[0].at("reason") : plan.at("treatments")[0].at("no_heat_reason");
  INFO(why);
  CHECK(says(why, "fit"));
}

TEST_CASE("a missing folder, a missing file and one that is no text are told by their names") {
  check_faulty({"plan", "no/such/shop"}, {"no/such/shop", 0, "no such folder", "shop folder"});
  check_faulty({"proofread", "no/such/shop"}, {"no/such/shop", 0, "no such folder", "shop folder"});
  check_faulty({"exposure", "no/such/shop"}, {"no/such/shop", 0, "no such folder", "shop folder"});
  check_faulty({"exposure", "--weather", "none.epw"}, {"none.epw", 0, "no such file", "text file"});

  const DemoShop shop;
  const int line = shop.replace("site.toml", "\"weather.epw\"", "\"wether.epw\"");
  check_faulty({"plan", shop.folder()}, {"site.toml", line, "wether.epw", "file"});
  std::filesystem::remove(shop.path("queue.csv"));
  check_faulty({"plan", shop.folder()}, {"queue.csv", 0, "no such file", "file"});
  // Even for an administrator, to whom no right is denied, a folder cannot be read as a file.
  std::filesystem::create_directory(shop.path("queue.csv"));
  check_faulty({"plan", shop.folder()}, {"queue.csv", 0, "a folder", "file"});
  std::filesystem::remove(shop.path("queue.csv"));
  shop.write("queue.csv", std::string("PK\x03\x04\0\0\0", 7));
  check_faulty({"plan", shop.folder()}, {"queue.csv", 0, "zero bytes", "text"});
}

TEST_CASE("a unit nobody knows and a temperature without unit are refused") {
  check_spoilt({"ovens.toml", "\"90 °C\"", "\"71 bananas\"", "\"71 bananas\"", "71 °C or 160 °F"});
  check_spoilt({"ovens.toml", "\"90 °C\"", "\"90\"", "no unit", "71 °C or 160 °F"});
  check_spoilt({"ovens.toml", "\"90 °C\"", "90", "no unit", "71 °C or 160 °F"});
  check_spoilt({"air.csv", "24.8 °C", "24.8", "no unit", "°C"});
}

TEST_CASE("a solvent whose share or name is not known, and shares that do not add up, are refused") {
  check_spoilt({"materials.toml", "n_butanol = \"15 %\"", "n_butanol = \"unknown\"", "\"unknown\"", "share"});
  check_spoilt({"materials.toml", "n_butanol = \"15 %\"", "n_butanoll = \"15 %\"", "n_butanoll", "n_butanol",
                "Did you mean \"n_butanol\"?"});
  check_spoilt({"materials.toml", "n_butanol = \"15 %\"", "n_butanol = \"5 %\"", "90.0 %", "100 %"});
}

TEST_CASE("weather cut short, in a row or between two, is refused") {
  const std::string whole = whole_text(DAMPWARD_SOURCE_DIR "/data/demo/weather.epw");
  const std::size_t middle = whole.find('\n', whole.size() / 2) + 1;
  const int rows =
      static_cast<int>(std::count(whole.begin(), whole.begin() + static_cast<std::ptrdiff_t>(middle), '\n'));
  check_weather(whole.substr(0, middle), rows, "last hour", "day 31 of month 12");
  check_weather(whole.substr(0, middle + 30), rows + 1, "fields", "35 fields");
  check_weather("", 0, "empty", "");
}

TEST_CASE("a weather row with one field too many is refused at its line") {
  std::string text = whole_text(DAMPWARD_SOURCE_DIR "/data/demo/weather.epw");
  const std::size_t row = text.find("\n1987,1,9,3,");
  REQUIRE(row != std::string::npos);
  const int line =
      2 + static_cast<int>(std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(row), '\n'));
  check_weather(text.insert(row + 5, ","), line, "36 fields", "35 fields");
}

TEST_CASE("weather fillers of a few hours are filled and counted, a file of nothing else is refused") {
  std::string text = whole_text(DAMPWARD_SOURCE_DIR "/data/demo/weather.epw");
  // The ninth field of an EPW row is the relative humidity, and 999 its filler (EnergyPlus, Auxiliary Programs,
  // data dictionary of weather files; from memory).
  const auto fill = [&](const std::string& hour) {
    const std::size_t row = text.find("\n1987,1,9," + hour + ",");
    REQUIRE(row != std::string::npos);
    std::size_t cell = row;
    for (int comma = 0; comma < 8; ++comma) cell = text.find(',', cell) + 1;
    text.replace(cell, text.find(',', cell) - cell, "999");
  };
  for (const char* hour : {"3", "4", "5"}) fill(hour);
  const DemoShop shop;
  shop.write("weather.epw", text);
  const Run run = dampward_run({"exposure", shop.folder(), "--json"});
  CHECK(run.exit_code == 0);
  const Json report = only_document(run);
  CHECK(report.at("filled_hours") == 3);
  CHECK(report.at("gaps").empty());
  check_weather(weather_with({{8, "999"}}), 0, "fillers", "");
}

TEST_CASE("an unknown kind is refused with the one that was meant") {
  check_spoilt({"queue.csv", "TD-0112,river_radio", "TD-0112,river_radoi", "river_radoi", "a kind",
                "Did you mean \"river_radio\"?"});
  check_spoilt({"kinds.toml", "like = \"receiver_base\"", "like = \"reciever_base\"", "reciever_base",
                "receiver_base", "Did you mean \"receiver_base\"?"});
}

TEST_CASE("a serial that stands twice is refused with the line of the first") {
  check_spoilt({"queue.csv", "TD-0112", "TD-0107", "\"TD-0107\" a second time", "line 3"});
}

TEST_CASE("a shift that ends before it begins is refused") {
  check_spoilt({"crew.toml", "mon-fri 07:00-16:00", "mon-fri 16:00-07:00", "ends before it begins", "24:00"});
}

TEST_CASE("limits that contradict each other are refused") {
  check_spoilt({"ovens.toml", "[\"35 °C\", \"90 °C\"]", "[\"90 °C\", \"35 °C\"]", "above the hottest",
                "coldest first"});
  check_spoilt(
      {"materials.toml", "thin_brush = 0", "hottest_surface = \"8 °C\"", "10 to 8 °C", "below the hottest"});
  check_spoilt({"kinds.toml",
                "limit = \"72 °C\"\n"
                "limit_source = \"scraping melted at 72 °C on the hot plate, 2026-11-16\"",
                "limit = \"300 °C\"", "far above", ""});
}

TEST_CASE("1e300, NaN and a negative mass are refused") {
  const std::string mass = "mass = \"0.4..0.6..0.9 kg\"";
  check_spoilt({"kinds.toml", mass, "mass = \"1e300 kg\"", "1e300", "a mass such as"});
  check_spoilt({"kinds.toml", mass, "mass = nan", "nan", "a mass such as"});
  check_spoilt({"kinds.toml", mass, "mass = \"nan kg\"", "nan", "a mass such as"});
  check_spoilt({"kinds.toml", mass, "mass = \"-0.6 kg\"", "below zero", "a mass such as"});
  check_spoilt({"kinds.toml", "limit = \"72 °C\"", "limit = \"1e300 °C\"", "1e300", "a temperature"});
  check_spoilt({"spray.toml", "mixing = 0.4", "mixing = nan", "nan", ""});
  check_spoilt({"stock.csv", "6 L", "1e300 L", "1e300", "volume"});
  check_spoilt({"air.csv", "76 %", "nan %", "nan", ""});
}

TEST_CASE("what a spreadsheet has done to dates and serials is named") {
  check_spoilt({"queue.csv", "2027-02-06,1", "06/02/2027,1", "06/02/2027", "year-month-day",
                "2027-02-06 or 2027-06-02"});
  check_spoilt({"queue.csv", "2027-02-05,2", "2027-25-02,2", "2027-25-02", "year-month-day", "2027-02-25"});
  check_spoilt({"queue.csv", "TD-0112", "1.2E+05", "spreadsheet has shortened", "serial"});
}

TEST_CASE("lost leading zeros and a due date turned round are suspected, which stops nobody") {
  const DemoShop shop;
  shop.write_queue({"0041,river_radio,damp,dust,2027-02-05,0,", "42,river_radio,damp,dust,2027-01-03,0,",
                    "0043,river_radio,damp,dust,2027-02-05,0,"});
  const Run plan = dampward_run({"plan", shop.folder()});
  CHECK(plan.exit_code == 0);
  for (const char* piece : {"queue.csv line 4", "\"42\"", "\"0042\"", "2027-01-03", "2027-03-01"}) {
    INFO(piece);
    CHECK(says(plan.err, piece));
  }
  CHECK_FALSE(says(plan.out, "Suspicious"));
  const Run proof = dampward_run({"proofread", shop.folder(), "--json"});
  CHECK(proof.exit_code == 0);
  const Json document = only_document(proof);
  CHECK(document.at("faults").empty());
  CHECK(document.at("warnings").size() == 2);
  for (const Json& warning : document.at("warnings")) check_shape(warning);
}

TEST_CASE("faults of several files are all named at once") {
  const DemoShop shop;
  shop.replace("ovens.toml", "swing = \"2 K\"", "swing = \"2 bananas\"");
  shop.replace("crew.toml", "mon-fri 07:00-16:00", "mon-fri 16:00-07:00");
  shop.replace("queue.csv", "2027-02-06,1", "06/02/2027,1");
  std::set<std::string> files;
  const Json faults = plan_of(shop, 2).at("faults");
  for (const Json& fault : faults) files.insert(fault.at("file"));
  CHECK(files == std::set<std::string>{"crew.toml", "ovens.toml", "queue.csv"});
}

TEST_CASE("a misspelt key and a misspelt verb are answered with the one that was meant") {
  check_spoilt(
      {"ovens.toml", "evenness = \"3 K\"", "eveness = \"3 K\"", "eveness", "", "Did you mean \"evenness\"?"});
  check_faulty({"proofraed", "demo"},
               {"command line", 0, "proofraed", "proofread", "Did you mean \"proofread\"?"});
  check_faulty({"plann", "demo"}, {"command line", 0, "plann", "plan", "Did you mean \"plan\"?"});
}

TEST_CASE("a verb with two letters turned round is answered with the one that was meant") {
  check_faulty({"plna", "demo"}, {"command line", 0, "plna", "plan", "Did you mean \"plan\"?"});
}

TEST_CASE("a misspelt option is answered with the one that was meant") {
  const DemoShop shop;
  check_faulty({"plan", shop.folder(), "--unit", "us"},
               {"command line", 0, "--unit", "", "Did you mean \"--units\"?"});
  check_faulty({"plan", shop.folder(), "--form", "2027-02-01 07:00"},
               {"command line", 0, "--form", "", "Did you mean \"--from\"?"});
  check_faulty({"exposure", "--wether", "weather.epw"},
               {"command line", 0, "--wether", "", "Did you mean \"--weather\"?"});
}

TEST_CASE("an option's value that cannot be used is refused with those that can") {
  const DemoShop shop;
  check_faulty({"plan", shop.folder(), "--from", "yesterday"},
               {"command line", 0, "yesterday", "2026-11-30 07:00"});
  check_faulty({"plan", shop.folder(), "--units", "imperial"}, {"command line", 0, "imperial", "metric"});
  check_faulty({"exposure"}, {"command line", 0, "neither a folder nor --weather", ""});
  CHECK(dampward_run({"plan"}).exit_code == 2);
  CHECK(dampward_run({}).exit_code == 2);
}

TEST_CASE("a folder that cannot be written is refused and nothing half-written stays") {
  const ScratchFolder scratch;
  scratch.write("file", "somebody's notes\n");
  std::filesystem::create_directory(scratch.path() / "full");
  scratch.write("full/notes.txt", "somebody's notes\n");
  const auto before = names_in(scratch.path());
  // A file in the way, a file where the parent should be, no parent, a folder in use. The kernel's own files
  // take no folder, not even an administrator's.
  for (const char* place : {"file", "file/shop", "none/shop", "full"}) {
    const std::string folder = (scratch.path() / place).string();
    check_faulty({"start", folder}, {folder, 0, "", ""});
    check_faulty({"start", folder, "--example"}, {folder, 0, "", ""});
  }
  check_faulty({"start", "/proc/dampward_shop"},
               {"/proc/dampward_shop", 0, "cannot be written", "right to write"});
  CHECK(names_in(scratch.path()) == before);
  CHECK(whole_text(scratch.path() / "file") == "somebody's notes\n");
}

TEST_CASE("no verb but start writes into a shop folder") {
  const DemoShop shop;
  const auto before = names_in(shop.folder());
  const auto changed = std::filesystem::last_write_time(shop.folder());
  for (const char* verb : {"proofread", "plan", "exposure"})
    CHECK(dampward_run({verb, shop.folder()}).exit_code == 0);
  CHECK(names_in(shop.folder()) == before);
  CHECK(std::filesystem::last_write_time(shop.folder()) == changed);
}
